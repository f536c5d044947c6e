#include "engine/readings/forecasts.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kMillimetresPerHour = 1e-3 / 3600.0;  // m/s

// The newest issue out by `now`, else what bears no time of issue; of two alike the first by its name.
const GaugeSeries* newest_of(const std::string& station, Variable variable, const std::vector<GaugeSeries>& all,
                             Instant now) {
  const GaugeSeries* best = nullptr;
  for (const GaugeSeries& series : all) {
    if (series.station != station || series.variable != variable || series.daily) continue;
    if (series.issued && *series.issued > now) continue;
    const bool better = best == nullptr || series.issued > best->issued ||
                        (series.issued == best->issued && series.series_id < best->series_id);
    if (better) best = &series;
  }
  return best;
}

bool is_value(const Reading& row, double least) { return row.si && std::isfinite(*row.si) && *row.si >= least; }

template <class T>
void append(Series<T>& out, const GaugeSeries& series, double least, T (*from)(double), double factor = 1.0) {
  for (const Reading& row : series.readings) {
    if (!is_value(row, least)) continue;
    out.times.push_back(row.time);
    out.values.push_back(from(*row.si * factor));
  }
}

void tell_issue(Weather& weather, const GaugeSeries& series) {
  if (series.issued) weather.issued = std::max(weather.issued, *series.issued);
}

}  // namespace

std::optional<OfficialForecast> official_forecast(const std::string& station, const std::vector<GaugeSeries>& all,
                                                  Instant now) {
  const GaugeSeries* series = newest_of(station, Variable::Flow, all, now);
  if (series == nullptr || !series->issued) return std::nullopt;
  OfficialForecast out{.station = station, .issued = *series->issued, .flow = {}};
  append(out.flow, *series, 0.0, cubic_metres_per_second);
  return out.flow.empty() ? std::nullopt : std::optional{std::move(out)};
}

std::optional<Weather> weather(const std::string& station, const std::vector<GaugeSeries>& all, Instant now) {
  constexpr double kColdestAir = -90.0;  // C; under any ever read
  Weather out{.station = station, .issued = {}, .air = {}, .rain = {}, .wind = {}};
  if (const auto* series = newest_of(station, Variable::AirTemperature, all, now)) {
    append(out.air, *series, kColdestAir, celsius);
    tell_issue(out, *series);
  }
  if (const auto* series = newest_of(station, Variable::Rain, all, now)) {
    append(out.rain, *series, 0.0, metres_per_second, kMillimetresPerHour);
    tell_issue(out, *series);
  }
  if (const auto* series = newest_of(station, Variable::Wind, all, now)) {
    append(out.wind, *series, 0.0, metres_per_second);
    tell_issue(out, *series);
  }
  if (out.air.empty() && out.rain.empty() && out.wind.empty()) return std::nullopt;
  return out;
}

}  // namespace floatwright
