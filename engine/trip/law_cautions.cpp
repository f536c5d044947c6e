// What the law may say: closures as typed, rules looked up long ago, closures that warm water makes likely.
#include <algorithm>
#include <map>

#include "engine/trip/cautions.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

constexpr std::chrono::days kRulesHold{7};  // judgement
constexpr int kDaysRunning = 3;             // Montana administrative rule
const char* const kBasisClosureLikely =
    "Montana administrative rule on daily maxima of three days running (text read); other states differ";

std::optional<Temperature> daily_maximum(const Series<Temperature>& series, const LocalDay& local) {
  std::optional<Temperature> highest;
  for (std::size_t i = 0; i < series.size(); ++i) {
    if (series.times[i] < local.start || series.times[i] >= local.end) continue;
    if (!highest || series.values[i] > *highest) highest = series.values[i];
  }
  return highest;
}

// The least of the daily maxima of the days running up to and with `last`; none where a day has no reading.
std::optional<Temperature> least_maximum(const RiverDay& day, const Series<Temperature>& series, std::chrono::sys_days last) {
  std::optional<Temperature> least;
  for (int back = 0; back < kDaysRunning; ++back) {
    const auto highest = daily_maximum(series, local_day(last - std::chrono::days{back}, day.river.time_zone));
    if (!highest) return std::nullopt;
    least = least ? std::min(*least, *highest) : *highest;
  }
  return least;
}

bool bull_trout_water(const River& river) { return heat_limits(river, {}).fish == "bull trout"; }

}  // namespace

void add_closures(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  std::map<std::size_t, std::size_t> told;  // by closure: its caution
  for (const TimedPassage& row : times.rows) {
    for (const std::size_t closure : row.passage.closures) {
      const Closure& typed = day.river.closures[closure];
      const auto [before, is_new] = told.try_emplace(closure, cautions.size());
      if (!is_new && !typed.hours) cautions[before->second].to = row.leave;
      if (!is_new) continue;
      Caution caution{.kind = CautionKind::Closure, .weight = weight_of(CautionKind::Closure), .where = row.passage.name};
      caution.from = typed.hours ? at_local(day.day, typed.hours->from, day.river.time_zone) : row.arrive;
      caution.to = typed.hours ? at_local(day.day, typed.hours->to, day.river.time_zone) : row.leave;
      caution.text = typed.why;
      caution.basis = typed.source.empty() ? "typed in the river file" : typed.source;
      cautions.push_back(caution);
    }
  }
}

void add_rules_old(const RiverDay& day, std::vector<Caution>& cautions) {
  const auto& checked = day.river.rules_checked_on;
  if (checked && std::chrono::sys_days{day.day} - std::chrono::sys_days{*checked} <= kRulesHold) return;
  Caution caution{.kind = CautionKind::RulesOld, .weight = weight_of(CautionKind::RulesOld)};
  caution.basis = "judgement: rules looked up over a week ago may have changed";
  caution.our_judgement = true;
  caution.date = checked;
  cautions.push_back(caution);
}

void add_closure_likely(const RiverDay& day, std::vector<Caution>& cautions) {
  const Temperature threshold = bull_trout_water(day.river) ? fahrenheit(60.0) : fahrenheit(73.0);
  const std::chrono::sys_days today{local_date(day.now, day.river.time_zone)};
  for (std::size_t g = 0; g < day.records.size() && g < day.river.gauges.size(); ++g) {
    // Today may not have had its warmest hour yet: then the three days before it.
    auto least = least_maximum(day, day.records[g].temperature, today);
    if (!least || *least < threshold) least = least_maximum(day, day.records[g].temperature, today - std::chrono::days{1});
    if (!least || *least < threshold) continue;
    Caution caution{.kind = CautionKind::ClosureLikely, .weight = weight_of(CautionKind::ClosureLikely)};
    caution.about = day.river.gauges[g].name.empty() ? day.river.gauges[g].id : day.river.gauges[g].name;
    caution.basis = kBasisClosureLikely;
    caution.published = "Montana rule";
    caution.temperature = least;
    caution.temperature_limit = threshold;
    cautions.push_back(caution);
  }
}

}  // namespace floatwright
