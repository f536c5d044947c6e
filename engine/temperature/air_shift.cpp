#include "engine/temperature/air_shift.hpp"

#include <algorithm>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Period kDay = std::chrono::hours{24}, kHalfDay = kDay / 2;
constexpr Period kWidestGap = std::chrono::hours{6};  // forecasts come in steps of up to this
constexpr int kSamples = 24;

std::optional<Temperature> day_mean_about(const Series<Temperature>& air, Instant t) {
  const Instant first = air.times.front(), last = air.times.back();
  if (t < first - kHalfDay || t > last + kHalfDay) return std::nullopt;
  const Instant begin = std::clamp(t - kHalfDay, first, last - kDay);
  double sum = 0.0;  // C
  for (int i = 0; i < kSamples; ++i) {
    const auto value = value_at(air, begin + kDay * i / kSamples, kWidestGap);
    if (!value) return std::nullopt;
    sum += in_celsius(*value);
  }
  return celsius(sum / kSamples);
}

}  // namespace

std::optional<TemperatureChange> air_change(const Series<Temperature>& air, Instant from, Instant to) {
  if (air.empty() || air.times.back() - air.times.front() < kDay) return std::nullopt;
  const auto before = day_mean_about(air, from), after = day_mean_about(air, to);
  return before && after ? std::optional{*after - *before} : std::nullopt;
}

}  // namespace floatwright
