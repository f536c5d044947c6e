#include "engine/forecast/rain.hpp"

#include <date/date.h>
#include <fmt/core.h>

#include <algorithm>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Length kMuchRain = millimetres(12.0);
constexpr Period kWithin = std::chrono::hours{24};
constexpr Period kStep = std::chrono::hours{1};
constexpr Period kLongestRow = std::chrono::hours{6};

Period held(const Series<Speed>& rain, std::size_t i) {
  const std::size_t row = i + 1 < rain.size() ? i : std::max<std::size_t>(i, 1) - 1;
  return row + 1 < rain.size() ? std::min(rain.times[row + 1] - rain.times[row], kLongestRow) : kStep;
}

Length fallen(const Series<Speed>& rain, Instant from, Instant until) {
  Length sum{};
  for (std::size_t i = 0; i < rain.size(); ++i) {
    const Instant begin = std::max(rain.times[i], from);
    const Instant end = std::min<Instant>(rain.times[i] + held(rain, i), until);
    if (end > begin) sum = sum + rain.values[i] * duration(end - begin);
  }
  return sum;
}

}  // namespace

std::optional<Instant> wet_from(const Weather& weather, Instant now, Instant until) {
  for (Instant t = now + kStep; t <= until; t += kStep)
    if (fallen(weather.rain, t - kWithin, t) >= kMuchRain) return t;
  return std::nullopt;
}

std::string rain_note(Instant from, const std::string& gauge, const std::string& save) {
  return fmt::format(
      "12 mm of rain within 24 h are forecast by {}: at gauge {} the high case is taken {:.1f} times as high from then "
      "on{}.",
      date::format("%Y-%m-%d %H:%M UTC", from), gauge, kRainRaisesHighCase, save);
}

}  // namespace floatwright
