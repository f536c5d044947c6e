#include "engine/routing/lag_pair.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "engine/routing/lag_fit.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr Speed kSlowestWave = Speed::from_si(0.3);      // judgement, as the next
constexpr Duration kLater = hours(6.0);                  // than the slowest wave, and it is another day's change
constexpr double kLeastAlike = 0.3, kAlikeEnough = 0.5;  // correlation of the two records' changes; judgement
constexpr double kSmallerBelow = 0.5;                    // a change spreads on its way: what is looked for below
constexpr int kMostShifts = 6;
constexpr Period kGapWorthTelling = std::chrono::hours{24 * 7};

std::string say_day(Instant t) {
  const std::chrono::year_month_day day{std::chrono::floor<std::chrono::days>(t)};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}
std::string say_time(Duration t) {
  return t < hours(3.0) ? fmt::format("{:.0f} min", in_minutes(t)) : fmt::format("{:.1f} h", in_hours(t));
}

void add_gap_notes(const std::string& gauge, const Series<Discharge>& record, std::vector<std::string>& notes) {
  for (std::size_t i = 1; i < record.size(); ++i)
    if (record.times[i] - record.times[i - 1] > kGapWorthTelling)
      notes.push_back(fmt::format("Gauge {} has no usable flow from {} to {}: no change is taken across the gap.",
                                  gauge, say_day(record.times[i - 1]), say_day(record.times[i])));
}

// A clock set to summer time, or back, is an hour off; all else is guessed at.
std::string say_shift(const LagPair& pair, Instant at, Duration by) {
  const bool clock = std::abs(std::abs(in_minutes(by)) - 60.0) <= 12.0;
  return fmt::format(
      "From about {} on, changes take {} {} from {} to {} than before: {}; only what came after is used.", say_day(at),
      say_time(Duration::from_si(std::abs(by.si()))), by > Duration{} ? "longer" : "less", pair.upper.id, pair.lower.id,
      clock ? "was a clock set an hour on or back (summer time)" : "was a gauge moved, or a clock set");
}

// A plant's changes are sharp; those of a storm, and of any wave far down, show over longer windows.
std::optional<MovesTogether> together_at(const LagPair& pair, const PairedFlows& flows) {
  const Duration step = duration(flows.grid.step), day = hours(24.0);
  const Duration earliest = -1.0 * std::max(day, 3.0 * step);
  const Duration latest = std::max(day + pair.apart() / kSlowestWave, 3.0 * step);
  std::optional<MovesTogether> best;
  for (const Duration window : {hours(1.0), hours(3.0), hours(12.0)}) {
    const auto together = moves_together(flows, earliest, latest, window);
    if (together && (!best || together->correlation > best->correlation)) best = together;
    if (best && best->correlation >= kAlikeEnough) break;
  }
  return best;
}

// The lag at which the two records move together, or why there is none.
Measured<Duration> rough_lag(const LagPair& pair, const PairedFlows& flows) {
  if (flows.grid.count < 3) return Absent{"the two records never ran at the same time"};
  const auto together = together_at(pair, flows);
  if (!together) return Absent{"one of the two records does not change"};
  if (together->correlation < kLeastAlike)
    return Absent{fmt::format("the two records do not move together (their changes correlate {:.2f} at best)",
                              together->correlation)};
  if (together->lag < Duration{})
    return Absent{
        fmt::format("changes show at {} {} before they show at {}: check the two places in the river file "
                    "and both clocks, if it is not rain of its own",
                    pair.lower.id, say_time(-1.0 * together->lag), pair.upper.id)};
  if (together->lag > std::max(pair.apart() / kSlowestWave + kLater, 1.5 * duration(flows.grid.step)))
    return Absent{
        fmt::format("changes show at {} only {} after {}, later than the slowest wave would bring them: what comes "
                    "back day by day is not what travelled",
                    pair.lower.id, say_time(together->lag), pair.upper.id)};
  return together->lag;
}

double spread_of(const std::vector<double>& flow) {  // standard deviation, m3/s
  double n = 0.0, sum = 0.0, squares = 0.0;
  for (const double q : flow) {
    if (std::isnan(q)) continue;
    n += 1.0;
    sum += q;
    squares += q * q;
  }
  return n > 0.0 ? std::sqrt(std::max(0.0, squares / n - sum * sum / n / n)) : 0.0;
}

std::vector<MatchedChange> matched(const LagPair& pair, const PairedFlows& flows, Discharge least, Duration lag) {
  const double usual_ratio = spread_of(flows.below) / spread_of(flows.above);
  const auto above = flow_changes(pair.in.above, least);
  const auto below = flow_changes(pair.in.below, kSmallerBelow * usual_ratio * least);
  std::vector<MatchedChange> changes;
  for (int pass = 0; pass < 3; ++pass) {
    changes = matched_changes(above, below, lag, usual_ratio, flows.grid.step);
    if (changes.empty()) break;
    std::vector<double> lags;  // s
    for (const MatchedChange& c : changes) lags.push_back(c.lag().si());
    lag = Duration::from_si(median(lags));
  }
  return changes;
}

// Only what came after the last shift of the lag is used; each shift is told.
std::vector<MatchedChange> since_last_shift(const LagPair& pair, std::vector<MatchedChange> changes, Period step,
                                            LagReport& report) {
  for (int i = 0; i < kMostShifts && !changes.empty(); ++i) {
    const auto shift = lag_shift(changes, fitted_lag_law(changes), step);
    if (!shift) break;
    report.used_from = changes[shift->at].above.half_way;
    report.notes.push_back(say_shift(pair, report.used_from, shift->after - shift->before));
    changes.erase(changes.begin(), changes.begin() + static_cast<std::ptrdiff_t>(shift->at));
  }
  return changes;
}

}  // namespace

bool LagPair::guessed(const River& river) const {
  const auto reaches = in.graph.between(*upper.place, *lower.place);
  return std::any_of(reaches.begin(), reaches.end(), [&](std::size_t reach) {
    return reach_wave(river, in.graph.reaches[reach], cubic_metres_per_second(1.0), cubic_metres_per_second(1.0))
        .guessed;
  });
}

std::string no_way_down(const LagTuningInputs& in) {
  const GaugeSite &upper = in.river.gauges[in.upper], &lower = in.river.gauges[in.lower];
  if (!upper.place || !lower.place) return "gauge " + (upper.place ? lower : upper).id + " has no place on the river";
  if (!(*upper.place > *lower.place)) return fmt::format("gauge {} is not above gauge {}", upper.id, lower.id);
  if (wave_ends_between(in.river, *upper.place, *lower.place)) return "a dam or a lake lies between";
  return {};
}

Measured<std::vector<MatchedChange>> changes_at_both(const LagPair& pair, const PairedFlows& flows, LagReport& report) {
  add_gap_notes(pair.upper.id, pair.in.above, report.notes);
  add_gap_notes(pair.lower.id, pair.in.below, report.notes);
  const auto rough = rough_lag(pair, flows);
  if (!rough) return Absent{rough.why_absent()};
  report.used_from = flows.grid.start;
  report.least_change = telling_change(pair.in.above);
  auto changes = since_last_shift(pair, matched(pair, flows, report.least_change, *rough), flows.grid.step, report);
  report.changes = static_cast<int>(changes.size());
  if (report.changes < kLeastChanges)
    return Absent{fmt::format("only {} changes of flow that are large enough were seen at both gauges; it takes {}",
                              report.changes, kLeastChanges)};
  return changes;
}

}  // namespace floatwright
