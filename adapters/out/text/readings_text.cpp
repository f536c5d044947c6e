#include "adapters/out/text/readings_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/out/text/series_plot.hpp"
#include "engine/readings/usable.hpp"
#include "engine/wording/clock.hpp"
#include "engine/wording/say_reading.hpp"

namespace floatwright {
namespace {

NewestReading as_newest(const GaugeSeries& series, const Reading& row) {
  return {.variable = series.variable,
          .si = row.si ? Measured<double>{*row.si} : Measured<double>{Absent{"no value was sent"}},
          .time = row.time,
          .marks = row.marks,
          .series_id = series.series_id,
          .source = series.source};
}

class Shown {
 public:
  explicit Shown(const ReadingsShown& about) : about_(about), clock_(about.zone) {}

  // A forecast's rows lie ahead, so it is drawn to its end.
  [[nodiscard]] std::string block(const GaugeSeries& series) const {
    std::string out = head(series) + "\n" + newest(series) + "\n";
    if (series.daily) return out;
    const Instant end = series.issued ? series.readings.back().time : about_.now;
    for (const std::string& line : series_plot(series.readings, scale(series, end))) out += line + "\n";
    return out;
  }

 private:
  [[nodiscard]] std::string value(const GaugeSeries& series, const Reading& row) const {
    return say_value(as_newest(series, row), about_.units);
  }

  [[nodiscard]] std::string when(Instant t) const { return day_of_week(clock_.day(t)) + " " + clock_.minute(t); }

  [[nodiscard]] std::string head(const GaugeSeries& series) const {
    const std::string what = (series.daily ? "daily " : "") + name_of(series.variable);
    const std::string which = series.sensor.empty() ? series.series_id : series.sensor;
    const std::string issued = series.issued ? ", a forecast made " + when(*series.issued) : "";
    return fmt::format("{}{} ({}): {} readings, {} to {}", what, issued, which, series.readings.size(),
                       when(series.readings.front().time), when(series.readings.back().time));
  }

  [[nodiscard]] std::string newest(const GaugeSeries& series) const {
    const Reading& row = series.readings.back();
    if (series.issued) return "  last " + value(series, row) + ", for " + when(row.time);
    if (series.daily) return "  newest " + value(series, row) + ", of " + day_of_week(std::chrono::floor<std::chrono::days>(row.time));
    return "  newest " + value(series, row) + ", " + say_when(as_newest(series, row), about_.now, clock_.day(about_.now), clock_);
  }

  // "06:00" from six to nine.
  [[nodiscard]] std::string third_hour(Instant t) const {
    return fmt::format("{:02}:00", std::stoi(clock_.minute(t).substr(0, 2)) / 3 * 3);
  }

  [[nodiscard]] PlotScale scale(const GaugeSeries& series, Instant end) const {
    const Instant from = std::max(about_.from, std::min(series.readings.front().time, end - std::chrono::hours{1}));
    const bool hours = end - from < std::chrono::hours{36};
    return {.from = from,
            .to = end,
            .value = [this, &series](double si) { return value(series, {.time = {}, .si = si, .marks = {}}); },
            .mark = [this, hours](Instant t) { return hours ? third_hour(t) : day_of_week(clock_.day(t)); },
            .is_usable = [&series, end](const Reading& row) { return !why_not_usable(row, series.variable, end); }};
  }

  const ReadingsShown& about_;
  LocalClock clock_;
};

}  // namespace

std::string readings_text(const std::vector<GaugeSeries>& series, const ReadingsShown& about) {
  const Shown shown(about);
  std::string out = fmt::format("{} {}, hours of {}\n", about.gauge, about.station, about.zone);
  for (const GaugeSeries& one : series)
    if (!one.readings.empty()) out += "\n" + shown.block(one);
  return out;
}

}  // namespace floatwright
