#include "engine/sinking/still_water.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kSlackSink = 0.9;  // of the still-water rate; judgement
// Judgement: over its first half a level retrieve rises no more and sinks no more than these.
constexpr double kRises = 0.10, kSinks = 0.25;
constexpr Length kAnyway = metres(0.15);

Length deepest(const SinkingPart& sinking) { return sinking.whole_line ? metres(1e3) : sinking.length; }

Retrieve retrieve_of(Length first, Length halfway) {
  if (halfway < first - std::max(kAnyway, kRises * first)) return Retrieve::Rising;
  return halfway > first + std::max(kAnyway, kSinks * first) ? Retrieve::Sinking : Retrieve::Level;
}

StillCount row_of(const CastPath& path, Length lake) {
  const auto at = [&](double share) {
    return path.samples[static_cast<std::size_t>(std::lround(share * static_cast<double>(path.samples.size() - 1)))];
  };
  const auto line = [&](double share) { return std::min(at(share).tip_depth, lake); };
  StillCount row;
  row.at_first = line(0.0);
  row.halfway = line(0.5);
  row.at_the_end = line(0.9);
  row.fly_at_first = std::min(at(0.0).fly_depth, lake);
  row.retrieve = retrieve_of(row.at_first, row.halfway);
  row.to_the_bed = at(0.0).tip_depth >= lake;
  return row;
}

}  // namespace

Length counted_depth(const SinkingPart& sinking, Duration count) {
  return std::min(kSlackSink * (sinking.sink_rate * count), deepest(sinking));
}

Measured<Duration> count_to(const SinkingPart& sinking, Length depth) {
  if (!(sinking.sink_rate > Speed{})) return Absent{"this line floats"};
  if (depth > deepest(sinking)) return Absent{"its sinking part is shorter than that"};
  return depth / (kSlackSink * sinking.sink_rate);
}

Measured<std::vector<StillCount>> still_counts(const Tackle& tackle, const Rig& rig, const StillWater& water,
                                               const std::vector<Duration>& counts, Speed strip, Length cast,
                                               Length rod) {
  const SinkingPart sinking = sinking_part(tackle, rig);
  if (!(sinking.sink_rate > Speed{})) return Absent{"this line floats: nothing is counted down"};
  std::vector<StillCount> rows;
  for (const Duration count : counts) {
    Technique technique;
    technique.method = Method::Strip;
    technique.count = count;
    technique.strip = strip;
    const auto path = cast_path(tackle, rig, technique,
                                {water.depth, SurfaceSpeed{}, Profile{}, Speed{}, water.temperature}, cast, rod);
    if (!path) return Absent{path.why_absent()};
    if (path->samples.empty()) return Absent{"the retrieve has no length"};
    rows.push_back(row_of(*path, water.depth));
    rows.back().count = count;
  }
  return rows;
}

}  // namespace floatwright
