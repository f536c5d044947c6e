#include "engine/coverage_of_river.hpp"

#include <algorithm>
#include <iterator>
#include <mutex>
#include <set>

#include "engine/choice/tables_needed.hpp"
#include "engine/coverage/covering_lines.hpp"
#include "engine/coverage/water_seconds.hpp"
#include "engine/water/described.hpp"

namespace floatwright {
namespace {

// Waters of one reach on one day, fished.
class Tally {
 public:
  Tally(const RecordAsked& asked, const ReachDays& record, const WaterSeconds& seconds)
      : asked_(asked), record_(record), seconds_(seconds) {}

  void add(const ReachDay& day) {
    const auto& waters = waters_of(asked_.river, asked_.graph.reaches[record_.reaches[day.reach].reach]);
    double fishing_time = 0.0;
    for (const Water& water : waters) fishing_time += water.fishing_time;
    for (std::size_t w = 0; w < waters.size() && fishing_time > 0.0; ++w)
      add(day, waters[w].type, waters[w].fishing_time / fishing_time, seconds_.at(day, w));
  }

  void add(Tally later) {
    std::ranges::move(later.fishing_, std::back_inserter(fishing_));
    unreached_ += later.unreached_;
    unknown_ += later.unknown_;
    unknown_why_.merge(later.unknown_why_);
  }

  [[nodiscard]] Coverage told(const std::vector<ConsideredLine>& lines, int most) && {
    Coverage found = coverage(lines, std::move(fishing_), most);
    found.unreached = unreached_;
    found.unknown = unknown_;
    found.unknown_why.assign(unknown_why_.begin(), unknown_why_.end());
    found.counted = record_.counted;
    return found;
  }

 private:
  void add(const ReachDay& day, WaterType type, double weight, const FishedWater& found) {
    if (!found.why_unknown.empty()) {
      unknown_ += weight;
      unknown_why_.insert(found.why_unknown);
      return;
    }
    const std::chrono::year_month_day date{day.date};
    for (const bool hatch : {false, true}) {
      const double part = weight * (hatch ? day.hatch : 1.0 - day.hatch);
      if (!(part > 0.0)) continue;
      Conditions conditions{.type = type, .temperature = {}, .clarity = {}, .sun_elevation = {}, .hatch = hatch};
      if (day.temperature) conditions.temperature = *day.temperature;
      const LineMask lines = covering_lines(found.seconds, conditions, asked_.settings.preferences, asked_.judgement);
      if (lines == 0)
        unreached_ += part;
      else
        fishing_.push_back({lines, part, day.flow, static_cast<int>(unsigned(date.month())), type});
    }
  }

  const RecordAsked& asked_;
  const ReachDays& record_;
  const WaterSeconds& seconds_;
  std::vector<CoveredFishing> fishing_;
  double unreached_ = 0.0, unknown_ = 0.0;  // reach-days
  std::set<std::string> unknown_why_;
};

void add(DaysCounted& sum, const DaysCounted& part) {
  for (const auto count : {&DaysCounted::dates, &DaysCounted::gaps, &DaysCounted::fishable, &DaysCounted::temperature_known,
                           &DaysCounted::closed, &DaysCounted::outside_flows, &DaysCounted::too_warm, &DaysCounted::no_flow})
    sum.*count += part.*count;
}

// Years side by side.
ReachDays all_reach_days(const RecordAsked& asked, const RecordedRiver& river, const DoEach& do_each) {
  constexpr std::chrono::days kYear{365};
  const auto years = static_cast<std::size_t>((asked.last - asked.first) / kYear) + 1;
  std::vector<ReachDays> parts(years);
  do_each(years, [&](std::size_t i) {
    const auto first = asked.first + static_cast<int>(i) * kYear;
    const RecordAsked part{asked.river, asked.graph, asked.settings, asked.tackle, asked.judgement,
                           first, std::min(asked.last, first + kYear - std::chrono::days{1})};
    parts[i] = reach_days(part, river);
  });
  ReachDays all = std::move(parts.front());
  for (std::size_t i = 1; i < years; ++i) {
    std::ranges::move(parts[i].days, std::back_inserter(all.days));
    add(all.counted, parts[i].counted);
  }
  all.counted.last = asked.last;
  return all;
}

void work_out_all(WaterSeconds& seconds, const CoverageAsked& asked) {
  std::mutex telling;
  std::size_t done = 0;
  asked.do_each(seconds.runs(), [&](std::size_t run) {
    seconds.work_out(run);
    const std::scoped_lock alone(telling);
    asked.progress(++done, seconds.runs());
  });
}

Tally tally_of_all(const RecordAsked& asked, const ReachDays& record, const WaterSeconds& seconds, const DoEach& do_each) {
  constexpr std::size_t kTogether = 500;  // reach-days
  const std::size_t days = record.days.size();
  const Tally none(asked, record, seconds);
  std::vector<Tally> parts((days + kTogether - 1) / kTogether, none);
  do_each(parts.size(), [&](std::size_t i) {
    for (std::size_t day = i * kTogether; day < std::min(days, (i + 1) * kTogether); ++day) parts[i].add(record.days[day]);
  });
  Tally all = none;
  for (Tally& part : parts) all.add(std::move(part));
  return all;
}

}  // namespace

TablesNeeded tables_for_coverage(const CoverageAsked& asked) {
  TablesNeeded needed;
  const Preferences& preferences = asked.settings.preferences;
  add_tables_needed(needed, asked.tackle.all, preferences, platforms_fished(preferences), asked.judgement);
  return needed;
}

Coverage coverage_of_river(const CoverageAsked& asked) {
  const RiverGraph graph = river_graph(asked.river);
  const RecordedRiver river(asked.river, graph, asked.records);
  const Preferences& preferences = asked.settings.preferences;
  const std::vector<ConsideredLine> lines = considered_lines(asked.tackle, preferences);
  const auto span = river.span();
  if (!span || (asked.since && *asked.since > span->second)) return coverage(lines, {}, preferences.rods_aboard);

  const RecordAsked record{asked.river,  graph, asked.settings, asked.tackle.all, asked.judgement,
                           std::max(span->first, asked.since.value_or(span->first)), span->second};
  const ReachDays days = all_reach_days(record, river, asked.do_each);
  const LinesAtHand at_hand(asked.tackle.all, lines, preferences, asked.judgement, asked.tables.get());
  WaterSeconds seconds(record, days, at_hand);
  work_out_all(seconds, asked);
  return tally_of_all(record, days, seconds, asked.do_each).told(lines, preferences.rods_aboard);
}

}  // namespace floatwright
