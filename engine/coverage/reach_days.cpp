#include "engine/coverage/reach_days.hpp"

#include <algorithm>

#include "engine/trip/flow_limits.hpp"
#include "engine/trip/heat.hpp"
#include "engine/trip/season.hpp"

namespace floatwright {
namespace {

constexpr Duration kHatchStep = minutes(30.0);

RiverDay day_of(const RecordAsked& asked, const RiverOnDate& water, std::chrono::year_month_day date) {
  static const std::vector<GaugeRecord> kNoReadings;
  return {asked.river,        asked.graph, asked.settings, asked.tackle, asked.judgement, kNoReadings, water.flows,
          water.temperatures, date,        water.noon};
}

// Closures without dates, so that every one of them cuts the river.
River always_closed(const River& river) {
  River copy = river;
  for (Closure& closure : copy.closures) closure.first_day = closure.last_day = std::nullopt;
  return copy;
}

bool is_closed(const River& river, const Passage& passage, std::chrono::year_month_day date) {
  return std::ranges::any_of(river.closures, [&](const Closure& closure) {
    const bool over = passage.middle() <= closure.from && passage.middle() >= closure.to;
    return over && !closure.hours && closed_in_any_year(closure, date);
  });
}

double hatch_share(const RiverDay& day, const std::optional<Temperature>& water) {
  int steps = 0, on = 0;
  for (Duration t = day.settings.earliest_launch; t < day.settings.latest_off; t = t + kHatchStep) {
    ++steps;
    on += std::ranges::any_of(day.river.hatches, [&](const Hatch& hatch) {
      const bool warm = !hatch.least_temperature || (water && *water >= *hatch.least_temperature);
      return warm && in_season(hatch.season, day.day) && in_hours(hatch.hours, t);
    });
  }
  return steps > 0 ? static_cast<double>(on) / steps : 0.0;
}

class Walk {
 public:
  Walk(const RecordAsked& asked, const RecordedRiver& record)
      : asked_(asked), record_(record), stop_(heat_limits(asked.river, asked.settings).stop) {}

  ReachDays walked() {
    out_.reaches = fished_reaches(asked_);
    DaysCounted& counted = out_.counted;
    counted.first = asked_.first;
    counted.last = asked_.last;
    for (auto date = asked_.first; date <= asked_.last; date += std::chrono::days{1}) {
      ++counted.dates;
      const auto water = record_.on(date);
      if (!water) {
        ++counted.gaps;
        continue;
      }
      const RiverDay day = day_of(asked_, *water, date);
      for (std::size_t reach = 0; reach < out_.reaches.size(); ++reach) visit(day, reach, date);
    }
    return std::move(out_);
  }

 private:
  void visit(const RiverDay& day, std::size_t reach, std::chrono::sys_days date) {
    DaysCounted& counted = out_.counted;
    const Passage& passage = out_.reaches[reach];
    if (is_closed(asked_.river, passage, day.day)) return void(++counted.closed);
    const auto flow = whole_flow(day, passage.reach, day.now);
    if (!flow || !(flow->middle > Discharge{})) return void(++counted.no_flow);
    const TimedPassage row{.passage = passage, .arrive = day.now, .leave = day.now};
    if (flow_limit(day, {.rows = {row}})) return void(++counted.outside_flows);
    const auto warmth = known_temperature(day, passage.reach, day.now);
    if (warmth && warmth->high >= stop_) return void(++counted.too_warm);
    ReachDay one{reach, date, flow->middle, std::nullopt, 0.0};
    if (warmth) one.temperature = warmth->middle;
    one.hatch = hatch_share(day, one.temperature);
    ++counted.fishable;
    counted.temperature_known += one.temperature.has_value();
    out_.days.push_back(one);
  }

  const RecordAsked& asked_;
  const RecordedRiver& record_;
  Temperature stop_;
  ReachDays out_;
};

}  // namespace

bool closed_in_any_year(const Closure& closure, std::chrono::year_month_day date) {
  if (!closure.first_day || !closure.last_day) return true;
  constexpr std::chrono::days kYear{365};
  if (std::chrono::sys_days{*closure.last_day} - std::chrono::sys_days{*closure.first_day} >= kYear) return true;
  const auto month_day = [](std::chrono::year_month_day day) {
    return MonthDay{static_cast<int>(unsigned(day.month())), static_cast<int>(unsigned(day.day()))};
  };
  return in_season({month_day(*closure.first_day), month_day(*closure.last_day)}, date);
}

std::vector<Passage> fished_reaches(const RecordAsked& asked) {
  if (asked.graph.stations.empty()) return {};
  const River river = always_closed(asked.river);
  const RiverOnDate none{};
  const RecordAsked closed{river, asked.graph, asked.settings, asked.tackle, asked.judgement, asked.first, asked.last};
  const RiverDay day = day_of(closed, none, asked.first);
  std::vector<Passage> all = passages(day, asked.graph.stations.front().place, asked.graph.stations.back().place);
  std::erase_if(all, [&](const Passage& passage) { return passage.lake || waters_of(day, passage).empty(); });
  return all;
}

ReachDays reach_days(const RecordAsked& asked, const RecordedRiver& record) { return Walk(asked, record).walked(); }

}  // namespace floatwright
