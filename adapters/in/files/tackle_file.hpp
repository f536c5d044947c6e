#pragma once
// tackle.json as the engine's Tackle; item i of each list is item i of the file.
#include "adapters/in/files/typed_object.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

[[nodiscard]] Tackle read_tackle(const LocatedJson& root, FileReading& reading);

}  // namespace floatwright
