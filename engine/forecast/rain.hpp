#pragma once
// Rain that may raise the river: 12 mm within 24 h.
#include <optional>
#include <string>

#include "engine/readings/weather.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

inline constexpr Length kMuchRain = millimetres(12.0);  // judgement, as the next
inline constexpr double kRainRaisesHighCase = 1.5;

// The first instant after `now`, and by `until`, at which 12 mm have fallen in the 24 h before.
[[nodiscard]] std::optional<Instant> wet_from(const Weather& weather, Instant now, Instant until);

// The note that a plan carries; `by` is when, in words. `official`: an agency's forecast is followed, which
// counts the rain itself.
[[nodiscard]] std::string rain_note(const std::string& by, bool official);

}  // namespace floatwright
