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

}  // namespace

Discharge front_flow(Discharge before, Discharge after) { return after > before ? (before + after) / 2.0 : before; }

Discharge telling_change(const Series<Discharge>& record) {
  if (record.empty()) return {};
  std::vector<double> flow;  // m3/s
  for (const Discharge q : record.values) flow.push_back(q.si());
  std::sort(flow.begin(), flow.end());
  const double range = quantile_of_sorted(flow, 0.98) - quantile_of_sorted(flow, 0.02);
  return Discharge::from_si(std::max(0.5 * quantile_of_sorted(flow, 0.5), 0.15 * range));
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
