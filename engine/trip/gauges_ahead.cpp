#include "engine/trip/gauges_ahead.hpp"

#include <date/date.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "engine/forecast/release_plan.hpp"
#include "engine/routing/brought_down.hpp"
#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

constexpr Period kBack = std::chrono::hours{96};
constexpr Period kAfterTheDay = std::chrono::hours{6};
constexpr Duration kReachedHour = hours(20.0);  // of a day: the last that a plan tells of

// What the next gauge up the stem with a flow of its own has shown.
FromAbove shown_above(const River& river, const RiverGraph& graph, const std::vector<GaugeRecord>& records,
                      std::size_t gauge) {
  const auto& here = river.gauges[gauge].place;
  std::optional<std::size_t> nearest;
  for (std::size_t g = 0; here && g < river.gauges.size() && g < records.size(); ++g) {
    const auto& place = river.gauges[g].place;
    if (!place || *place <= *here || records[g].discharge.empty()) continue;
    if (!nearest || *place < *river.gauges[*nearest].place) nearest = g;
  }
  return nearest ? from_above(river, graph, *nearest, gauge, records[*nearest].discharge) : FromAbove{};
}

const Series<Discharge>* daily_above(const River& river, const std::vector<GaugeRecord>& records,
                                     const TunedDailyFlow* tuned) {
  for (std::size_t g = 0; tuned != nullptr && g < river.gauges.size() && g < records.size(); ++g)
    if (river.gauges[g].id == tuned->gauge_above) return &records[g].daily_discharge;
  return nullptr;
}

std::chrono::sys_days today_on(const River& river, Instant now) { return local_date(now, river.time_zone); }

// A gauge's own readings say nothing of a day more than two ahead.
void keep_to_what_is_known(const GaugeRecord& record, const std::string& time_zone, const TimeGrid& grid, Instant now,
                           GaugeOutlook& outlook) {
  const std::chrono::sys_days planned{local_date(grid.last() - kAfterTheDay - Period{1}, time_zone)};
  if (!outlook.flow || planned <= std::chrono::sys_days{local_date(now, time_zone)} + kOwnDaysAhead) return;
  const bool official = outlook.method == FlowMethod::Official || outlook.method == FlowMethod::OfficialAlone;
  if (official && record.official->flow.times.back() >= at_local(planned, kReachedHour, time_zone)) return;
  outlook.flow = Absent{"no official forecast of gauge " + outlook.gauge + " reaches " + date::format("%Y-%m-%d", planned)};
  outlook.method = FlowMethod::None;
  outlook.source.clear();
}

double away_from(const PlannedStretch& stretch, RiverPlace place) {  // m; 0 within
  return std::max({0.0, in_metres(place - stretch.from_place), in_metres(stretch.to_place - place)});
}

}  // namespace

std::chrono::year_month_day last_day_known(const River& river, const std::vector<GaugeRecord>& records, Instant now) {
  std::chrono::sys_days last = today_on(river, now) + kOwnDaysAhead;
  for (const GaugeRecord& record : records) {
    if (!record.official || record.official->flow.empty()) continue;
    const Instant until = record.official->flow.times.back();
    std::chrono::sys_days reached{local_date(until, river.time_zone)};
    if (time_of_day(until, river.time_zone) < kReachedHour) reached -= std::chrono::days{1};
    last = std::max(last, std::min(reached, today_on(river, now) + kFarthestOfficial));
  }
  return last;
}

TimeGrid hours_looked_at(const River& river, const std::vector<GaugeRecord>& records, std::chrono::year_month_day day,
                         Instant now) {
  const bool ramps = std::any_of(river.dams.begin(), river.dams.end(), [](const Dam& dam) { return dam.ramping; });
  TimeGrid grid{.start = std::chrono::floor<std::chrono::hours>(now) - kBack,
                .step = ramps ? std::chrono::minutes{15} : std::chrono::hours{1}};
  const std::chrono::sys_days last{last_day_known(river, records, now)};
  const auto planned = std::clamp(std::chrono::sys_days{day}, today_on(river, now), last);
  const Instant end = local_day(planned, river.time_zone).end + kAfterTheDay;
  grid.count = static_cast<std::size_t>((end - grid.start) / grid.step) + 1;
  return grid;
}

std::string why_no_day(const River& river, const std::vector<GaugeRecord>& records, std::chrono::year_month_day day,
                       Instant now) {
  if (std::chrono::sys_days{day} < today_on(river, now)) return "the day asked for is past";
  const std::chrono::sys_days last{last_day_known(river, records, now)};
  if (std::chrono::sys_days{day} <= last) return "";
  const std::string until = date::format("%Y-%m-%d", last);
  if (last > today_on(river, now) + kOwnDaysAhead)
    return "the day asked for is after " + until + ", the last that an official forecast of this river reaches";
  return "the day asked for is more than two days ahead and no official forecast of this river reaches it: a plan can be made up to " +
         until;
}

std::vector<GaugeOutlook> outlooks_of(const River& river, const RiverGraph& graph, const KnownOfGauges& known,
                                      const TimeGrid& grid, Instant now) {
  std::vector<GaugeOutlook> outlooks;
  const GaugeRecord silent;
  for (std::size_t g = 0; g < river.gauges.size(); ++g) {
    OutlookInputs in{.record = g < known.records.size() ? known.records[g] : silent,
                     .snow_fed = river.snow_fed,
                     .time_zone = river.time_zone,
                     .tuned = tuned_for(known.tuned.flows, river.gauges[g].id),
                     .tuned_daily = tuned_for(known.tuned.daily_flows, river.gauges[g].id),
                     .weather = known.weather};
    const FromAbove above = shown_above(river, graph, known.records, g);
    if (!above.routed.empty()) in.above = &above;
    in.daily_above = daily_above(river, known.records, in.tuned_daily);
    const DamAbove dam = dam_above(river, river.gauges[g]);
    in.dam_above = dam.dam;
    in.dam_close = dam.close;
    outlooks.push_back(gauge_outlook(in, grid, now));
    outlooks.back().gauge = river.gauges[g].id;
    keep_to_what_is_known(in.record, river.time_zone, grid, now, outlooks.back());
  }
  return outlooks;
}

std::string main_gauge(const River& river, const std::vector<GaugeOutlook>& outlooks, const PlannedStretch* stretch) {
  std::optional<std::size_t> best;
  for (std::size_t g = 0; g < river.gauges.size() && g < outlooks.size(); ++g) {
    const auto& place = river.gauges[g].place;
    if (!place || !outlooks[g].flow.has_value()) continue;
    if (!best) {
      best = g;
      continue;
    }
    const double here = stretch ? away_from(*stretch, *place) : 0.0;
    const double there = stretch ? away_from(*stretch, *river.gauges[*best].place) : 0.0;
    if (here < there || (here == there && *place > *river.gauges[*best].place)) best = g;
  }
  return best ? river.gauges[*best].id : "";
}

}  // namespace floatwright
