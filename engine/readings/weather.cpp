#include "engine/readings/weather.hpp"

#include <algorithm>

namespace floatwright {
namespace {

// When row `i` ceases to hold.
template <class T>
Instant end_of(const Series<T>& series, std::size_t i) {
  const bool last = i + 1 == series.size();
  const Period lone = std::chrono::hours{1};
  const Period step = !last ? series.times[i + 1] - series.times[i] : i > 0 ? series.times[i] - series.times[i - 1] : lone;
  return series.times[i] + std::min(step, kWeatherHolds);
}

template <class T>
bool holds_within(const Series<T>& series, std::size_t i, Instant from, Instant to) {
  return series.times[i] < to && end_of(series, i) > from;
}

}  // namespace

std::optional<Length> rain_between(const Weather& weather, Instant from, Instant to) {
  std::optional<Length> depth;
  for (std::size_t i = 0; i < weather.rain.size(); ++i) {
    if (!holds_within(weather.rain, i, from, to)) continue;
    const Period within = std::min(end_of(weather.rain, i), to) - std::max(weather.rain.times[i], from);
    depth = depth.value_or(Length{}) + weather.rain.values[i] * duration(within);
  }
  return depth;
}

std::optional<Length> wettest_day(const Weather& weather, Instant from, Instant to) {
  std::optional<Length> wettest;
  for (Instant start = std::chrono::floor<std::chrono::hours>(from); start <= to; start += std::chrono::hours{1})
    if (const auto depth = rain_between(weather, start, start + std::chrono::hours{24}))
      wettest = std::max(wettest.value_or(Length{}), *depth);
  return wettest;
}

std::optional<WindMet> strongest_wind(const Weather& weather, Instant from, Instant to) {
  std::optional<WindMet> met;
  for (std::size_t i = 0; i < weather.wind.size(); ++i)
    if (holds_within(weather.wind, i, from, to) && (!met || weather.wind.values[i] > met->speed))
      met = WindMet{weather.wind.values[i], std::max(weather.wind.times[i], from)};
  return met;
}

std::optional<WindyHours> hours_windier_than(const Weather& weather, Speed limit, Instant from, Instant to) {
  std::optional<WindyHours> hours;
  for (std::size_t i = 0; i < weather.wind.size(); ++i) {
    if (!holds_within(weather.wind, i, from, to) || weather.wind.values[i] <= limit) continue;
    if (!hours) hours = WindyHours{std::max(weather.wind.times[i], from), {}};
    hours->to = std::min(end_of(weather.wind, i), to);
  }
  return hours;
}

}  // namespace floatwright
