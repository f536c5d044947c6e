#pragma once
// What the name of a measure of the flood-monitoring service tells: "690140-level-stage-i-15_min-m" is station,
// parameter, qualifier, kind of value, period, unit. Station and qualifier may hold hyphens themselves
// ("E73639-anglian-level-tidal_level-Mean-15_min-mAOD"), the qualifier may be empty ("3400TH-flow--Mean-15_min-m3_s").
#include <optional>
#include <string_view>

#include "adapters/in/gauges/ea_streams.hpp"

namespace floatwright {

// None: the name is built otherwise.
[[nodiscard]] std::optional<EaMeasure> ea_flood_measure(std::string_view name);

}  // namespace floatwright
