#pragma once
// Rain that may raise the river: 12 mm within 24 h.
#include <optional>
#include <string>

#include "engine/readings/weather.hpp"

namespace floatwright {

inline constexpr double kRainRaisesHighCase = 1.5;

// The first instant after `now`, and by `until`, at which 12 mm have fallen in the 24 h before. Each row's rate holds
// until the next, for 6 h at most; the last for as long as the one before.
[[nodiscard]] std::optional<Instant> wet_from(const Weather& weather, Instant now, Instant until);

// The note that a plan carries; `save` is a clause such as ", where ...", or empty.
[[nodiscard]] std::string rain_note(Instant from, const std::string& gauge, const std::string& save = "");

}  // namespace floatwright
