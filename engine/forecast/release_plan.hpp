#pragma once
// A dam's releases as a person typed them: each flow holds until the next line. And which dam a gauge stands below.
#include <optional>

#include "engine/river/river.hpp"

namespace floatwright {

// None before the first line, or without a schedule.
[[nodiscard]] std::optional<Discharge> release_at(const Dam& dam, Instant t);

inline constexpr Length kCloseBelowDam = Length::from_si(8000.0);  // judgement: a front is there within an hour or so

struct DamAbove {
  const Dam* dam = nullptr;  // the nearest dam upstream on the stem, if it ramps and no lake lies between
  bool close = false;        // no tributary or diversion between, and within kCloseBelowDam
};
// Nothing for a gauge that is not on the stem.
[[nodiscard]] DamAbove dam_above(const River& river, const GaugeSite& gauge);

}  // namespace floatwright
