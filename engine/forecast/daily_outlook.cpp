#include "engine/forecast/daily_outlook.hpp"

#include <date/date.h>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "engine/forecast/ahead.hpp"
#include "engine/forecast/daily_ahead.hpp"
#include "engine/forecast/joined_official.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/forecast/rain.hpp"

namespace floatwright {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr days kOldest{2};

std::string on(sys_days date) { return date::format("%Y-%m-%d", date); }

// Means of days that were over at `now` by the clock on the wall there.
DailyRecord whole_days(const Series<Discharge>& means, sys_days today) {
  Series<Discharge> known;
  for (std::size_t i = 0; i < means.size() && means.times[i] < today; ++i) {
    known.times.push_back(means.times[i]);
    known.values.push_back(means.values[i]);
  }
  return daily_record(known);
}

// The flow by days from the newest mean's noon: straight lines through what is known and the two days ahead.
class DailyCourse {
 public:
  DailyCourse(const DailyRecord& own, const DailyAhead& ahead) : ahead_(ahead) {
    const auto last = static_cast<double>(own.size() - 1);
    for (std::size_t t = 0; t < own.size(); ++t)
      if (!std::isnan(own.ln_flow[t])) points_.push_back({static_cast<double>(t) - last, own.ln_flow[t]});
    const double newest = own.ln_flow.back();
    points_.push_back({1.0, newest + ahead.days[0].change});
    points_.push_back({2.0, newest + ahead.days[1].change});
  }

  [[nodiscard]] LnCases at(double day) const {
    const double y = middle(day);
    const LnBand band = widened(band_at(day), hours(24.0 * day));
    return {y + band.low, y, y + band.high};
  }

 private:
  struct Point {
    double day = 0.0, y = 0.0;
  };
  [[nodiscard]] double middle(double day) const {
    const auto next =
        std::find_if(points_.begin(), points_.end(), [&](const Point& point) { return point.day >= day; });
    if (next == points_.end()) return points_.back().y;
    if (next == points_.begin()) return next->y;
    const Point& before = *(next - 1);
    return before.y + (next->y - before.y) * (day - before.day) / (next->day - before.day);
  }
  // Opens over the newest day's last half, holds over the next day till its noon, then goes on to the second's.
  [[nodiscard]] LnBand band_at(double day) const {
    const LnBand &first = ahead_.days[0].band, &second = ahead_.days[1].band;
    const double opened = std::clamp(day / 0.5, 0.0, 1.0), onwards = std::clamp(day - 1.0, 0.0, 1.0);
    return {opened * first.low + onwards * (second.low - first.low),
            opened * first.high + onwards * (second.high - first.high)};
  }

  DailyAhead ahead_;
  std::vector<Point> points_;
};

std::string moved(const DailyAhead& ahead) {
  if (ahead.state == FlowState::Unknown) return "no mean of the day before the newest";
  const double percent = 100.0 * std::expm1(ahead.d);
  if (std::abs(percent) < 0.5) return "no change from one day's mean to the next";
  return fmt::format("{} {:.0f} % from one day's mean to the next", percent > 0.0 ? "up" : "down", std::abs(percent));
}

void tell(const OutlookInputs& in, const DailyAhead& ahead, sys_days newest, GaugeOutlook& outlook) {
  outlook.notes.push_back(
      fmt::format("At gauge {} only daily means are known, the newest of {}: how the flow moves within a day is not.",
                  outlook.gauge, on(newest)));
  if (!ahead.days[0].fitted && !ahead.days[1].fitted) {
    if (in.tuned_daily != nullptr)
      outlook.notes.push_back("At gauge " + outlook.gauge + " what was fitted to its daily means could not be used: " +
                              (in.tuned_daily->station == in.record.station
                                   ? "a day that it needs is missing."
                                   : "it was fitted to " + in.tuned_daily->station + "."));
    return;
  }
  const TunedDailyFlow& fit = *in.tuned_daily;
  outlook.source = fmt::format("its daily means from {} to {}", date::format("%Y-%m-%d", fit.record_from),
                               date::format("%Y-%m-%d", fit.record_to));
  if (!fit.gauge_above.empty()) outlook.source += " and those of gauge " + fit.gauge_above;
}

GaugeOutlook nothing(GaugeOutlook outlook, const std::string& because) {
  outlook.why = because;
  outlook.now = Absent{because};
  outlook.flow = Absent{because};
  return outlook;
}

DailyAhead look_ahead(const OutlookInputs& in, const DailyRecord& own, sys_days today) {
  const bool ours = in.tuned_daily != nullptr && in.tuned_daily->station == in.record.station;
  if (in.daily_above == nullptr) return daily_ahead(own, ours ? in.tuned_daily : nullptr, nullptr);
  const DailyRecord above = whole_days(*in.daily_above, today);
  return daily_ahead(own, ours ? in.tuned_daily : nullptr, &above);
}

std::optional<Instant> rain_from(const OutlookInputs& in, Instant until, GaugeOutlook& outlook) {
  if (in.weather == nullptr) return std::nullopt;
  const auto from = wet_from(*in.weather, outlook.now_at, until);
  const bool official = outlook.method == FlowMethod::Official;
  if (from) outlook.notes.push_back(rain_note(hour_and_day(*from, in.time_zone), official));
  return from;
}

PerCase<Discharge> flow_of(const LnCases& y) {
  const auto flow = [](double ln) { return Discharge::from_si(std::exp(ln)); };
  return {flow(y.low), flow(y.middle), flow(y.high)};
}

// Fills the flow of the grid and the instant from which it is forecast.
void over_grid(const DailyCourse& course, sys_days newest, const OutlookInputs& in, const TimeGrid& grid,
               GaugeOutlook& outlook) {
  const Instant noon = newest + std::chrono::hours{12};  // on the wall
  const auto day_of = [&](Instant t) { return in_hours(duration(shown_at(t, in.time_zone) - noon)) / 24.0; };
  const auto official = joined_official(in, grid.last(), outlook);
  if (official) outlook.method = FlowMethod::Official;
  const auto wet = rain_from(in, grid.last(), outlook);
  PerCase<std::vector<Discharge>> flow;
  outlook.forecast_from = grid.last() + grid.step;
  for (std::size_t i = 0; i < grid.count; ++i) {
    const Instant t = grid.at(i);
    if (day_of(t) > 0.0) outlook.forecast_from = std::min(outlook.forecast_from, t);
    LnCases y = course.at(day_of(t));
    if (official && t > outlook.now_at) {
      const double moved = official->ln_flow_or(t, [&](Instant then) { return course.at(day_of(then)).middle; }) - y.middle;
      y = {y.low + moved, y.middle + moved, y.high + moved};
    }
    if (wet && t >= *wet && !(official && official->ln_flow(t))) y.high += std::log(kRainRaisesHighCase);
    const PerCase<Discharge> at = flow_of(y);
    flow.low.push_back(at.low);
    flow.middle.push_back(at.middle);
    flow.high.push_back(at.high);
  }
  const Instant told_until = official ? official->until() : outlook.now_at;
  if (day_of(grid.last()) - day_of(told_until) > 2.5)
    outlook.notes.push_back("At gauge " + outlook.gauge + " the flow is only held after the second day past " +
                            on(newest) + ".");
  outlook.flow = std::move(flow);
}

}  // namespace

GaugeOutlook daily_outlook(const OutlookInputs& in, const TimeGrid& grid, Instant now) {
  GaugeOutlook outlook;
  outlook.gauge = in.record.gauge;
  const auto today = std::chrono::floor<days>(shown_at(now, in.time_zone));
  const DailyRecord own = whole_days(in.record.daily_discharge, today);
  if (own.size() == 0) return nothing(std::move(outlook), "no daily mean above zero");
  const sys_days newest = own.date(own.size() - 1);
  if (today - newest > kOldest) return nothing(std::move(outlook), "no daily mean since " + on(newest));

  const DailyAhead ahead = look_ahead(in, own, today);
  const bool ramps = in.dam_above != nullptr && in.dam_above->ramping;
  outlook.state = ramps ? FlowState::Regulated : ahead.state;
  outlook.method = FlowMethod::DailyMeans;
  outlook.only_daily_means = true;
  outlook.why = moved(ahead) + (ramps ? ", below a dam that ramps" : "");
  outlook.now = Discharge::from_si(std::exp(own.ln_flow.back()));
  outlook.now_at = start_of_day(newest, in.time_zone) + std::chrono::hours{12};
  tell(in, ahead, newest, outlook);
  over_grid(DailyCourse(own, ahead), newest, in, grid, outlook);
  return outlook;
}

}  // namespace floatwright
