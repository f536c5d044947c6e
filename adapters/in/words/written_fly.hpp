#pragma once
// A fly in words: one of the usual classes by name ("weighted streamer", engine/tackle/usual_flies.hpp), with its own
// mass and sink rate where they are given, or those alone ("0.6 g 4 in/s").
#include "adapters/in/words/phrase.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

// Failure 64: what was found, and how a fly is written.
[[nodiscard]] Result<FlyClass> fly_in(std::string_view option, std::string_view text);

}  // namespace floatwright
