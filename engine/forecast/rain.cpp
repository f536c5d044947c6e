#include "engine/forecast/rain.hpp"

#include <fmt/core.h>

namespace floatwright {
namespace {

constexpr Period kWithin = std::chrono::hours{24};
constexpr Period kStep = std::chrono::hours{1};

}  // namespace

std::optional<Instant> wet_from(const Weather& weather, Instant now, Instant until) {
  for (Instant t = now + kStep; t <= until; t += kStep)
    if (rain_between(weather, t - kWithin, t).value_or(Length{}) >= kMuchRain) return t;
  return std::nullopt;
}

std::string rain_note(const std::string& by, bool official) {
  return fmt::format(
      "12 mm (1/2 in) of rain within 24 h will have fallen by {} if the forecast holds: from then on the high case is taken {:.1f} "
      "times as high{}.",
      by, kRainRaisesHighCase, official ? ", where the agency's forecast does not already count the rain" : "");
}

}  // namespace floatwright
