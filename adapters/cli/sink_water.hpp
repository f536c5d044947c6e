#pragma once
// The water and the way of fishing out of the options of `sink`.
#include "adapters/cli/sink_options.hpp"

namespace floatwright {

[[nodiscard]] Result<KnownWater> water_asked_for(const SinkOptions& options);
[[nodiscard]] Result<Technique> technique_asked_for(const SinkOptions& options);

}  // namespace floatwright
