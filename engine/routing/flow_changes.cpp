#include "engine/routing/flow_changes.hpp"

#include <algorithm>
#include <cmath>

#include "engine/routing/even_flows.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr double kTurnsBack = 1.0 / 3.0;  // of the least change
constexpr double kPausesBelow = 0.1;      // of a swing's steepest rate
constexpr Period kPause = std::chrono::hours{1};

constexpr double kOverNoise = 10.0, kOfASwing = 0.2, kOfTheFlow = 0.05;
constexpr double kLargeSwing = 0.9;  // as a quantile of all days

struct Rows {  // of a record, first to last, both ends included
  std::size_t first = 0, last = 0;
};

std::vector<Rows> runs_without_gap(const Series<Discharge>& record) {
  std::vector<Rows> runs;
  const Period widest = bridged_gap(usual_step(record));
  for (std::size_t i = 0; i < record.size(); ++i) {
    if (i == 0 || record.times[i] - record.times[i - 1] > widest) runs.push_back({i, i});
    runs.back().last = i;
  }
  return runs;
}

// Highs and lows, from each of which the flow then goes by at least `back`; the last one ends the run.
std::vector<std::size_t> turning_points(const std::vector<Discharge>& flow, Rows run, Discharge back) {
  enum class Going { Unknown, Up, Down } going = Going::Unknown;
  std::vector<std::size_t> turns;
  std::size_t low = run.first, high = run.first;
  for (std::size_t i = run.first; i <= run.last; ++i) {
    if (flow[i] > flow[high]) high = i;
    if (flow[i] < flow[low]) low = i;
    if (going != Going::Down && flow[high] - flow[i] >= back) {
      turns.push_back(high);
      going = Going::Down;
      low = i;
    } else if (going != Going::Up && flow[i] - flow[low] >= back) {
      turns.push_back(low);
      going = Going::Up;
      high = i;
    }
  }
  if (going != Going::Unknown) turns.push_back(going == Going::Up ? high : low);
  return turns;
}

double rate(const Series<Discharge>& record, std::size_t i) {  // m3/s per s, from row i to the next
  return std::abs((record.values[i + 1] - record.values[i]).si()) /
         in_seconds(duration(record.times[i + 1] - record.times[i]));
}

// The steep parts of a swing, cut where it pauses.
std::vector<Rows> steep_parts(const Series<Discharge>& record, Rows swing, Period pause) {
  double steepest = 0.0;
  for (std::size_t i = swing.first; i < swing.last; ++i) steepest = std::max(steepest, rate(record, i));
  std::vector<Rows> parts;
  for (std::size_t i = swing.first; i < swing.last; ++i) {
    if (rate(record, i) <= kPausesBelow * steepest) continue;
    if (parts.empty() || record.times[i] - record.times[parts.back().last] >= pause) parts.push_back({i, i});
    parts.back().last = i + 1;
  }
  return parts;
}

Instant half_way(const Series<Discharge>& record, Rows part) {
  const Discharge half = (record.values[part.first] + record.values[part.last]) / 2.0;
  const bool rise = record.values[part.last] > record.values[part.first];
  std::size_t i = part.first;
  while (i + 1 < part.last && (rise ? record.values[i + 1] < half : record.values[i + 1] > half)) ++i;
  const Discharge step = record.values[i + 1] - record.values[i];
  const double share = step.si() == 0.0 ? 0.5 : std::clamp((half - record.values[i]) / step, 0.0, 1.0);
  return record.times[i] + period(duration(record.times[i + 1] - record.times[i]) * share);
}

// How far a row usually stands off the line between its neighbours.
double usual_noise(const std::vector<double>& flow) {
  std::vector<double> off;
  for (std::size_t i = 1; i + 1 < flow.size(); ++i)
    off.push_back(std::abs(flow[i] - (flow[i - 1] + flow[i + 1]) / 2.0));
  return off.empty() ? 0.0 : median(std::move(off));
}

// From the least to the most flow of a day (of three steps, where they are long), on a day on which much happens; m3/s.
double large_swing(const Series<Discharge>& record) {
  const Period day = std::max<Period>(std::chrono::hours{24}, 3 * usual_step(record));
  std::vector<double> swings;
  for (std::size_t first = 0, i = 0; i < record.size(); first = i) {
    while (i < record.size() && record.times[i] - record.times[first] <= day) ++i;
    const auto begin = record.values.begin();
    const auto [least, most] =
        std::minmax_element(begin + static_cast<std::ptrdiff_t>(first), begin + static_cast<std::ptrdiff_t>(i));
    swings.push_back((*most - *least).si());
  }
  std::sort(swings.begin(), swings.end());
  return quantile_of_sorted(swings, kLargeSwing);
}

}  // namespace

Discharge front_flow(Discharge before, Discharge after) { return after > before ? (before + after) / 2.0 : before; }

Discharge telling_change(const Series<Discharge>& record) {
  if (record.empty()) return {};
  std::vector<double> flow;  // m3/s
  for (const Discharge q : record.values) flow.push_back(q.si());
  const double least = std::max(kOverNoise * usual_noise(flow), kOfASwing * large_swing(record));
  return Discharge::from_si(std::max(least, kOfTheFlow * median(std::move(flow))));
}

std::vector<FlowChange> flow_changes(const Series<Discharge>& record, Discharge least) {
  std::vector<FlowChange> changes;
  if (!(least > Discharge{})) return changes;
  const Period pause = std::max<Period>(kPause, 2 * usual_step(record));
  for (const Rows run : runs_without_gap(record)) {
    const auto turns = turning_points(record.values, run, least * kTurnsBack);
    for (std::size_t i = 1; i < turns.size(); ++i)
      for (const Rows part : steep_parts(record, {turns[i - 1], turns[i]}, pause)) {
        const FlowChange change{half_way(record, part), record.values[part.first], record.values[part.last]};
        if (std::abs(change.size()) >= least.si()) changes.push_back(change);
      }
  }
  return changes;
}

}  // namespace floatwright
