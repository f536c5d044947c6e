#include "engine/routing/wave_travel.hpp"

#include <algorithm>
#include <cmath>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

constexpr double kWaveExponent = 0.34;
constexpr double kManning = 0.035;                          // s/m^(1/3), clean natural bed (Chow 1959 table 5-6)
constexpr Discharge kLeastFlow = Discharge::from_si(0.01);  // below it a wave time means nothing

Discharge at_least(Discharge q) { return std::max(q, kLeastFlow); }

Length overlap(const Reach& reach, const WaveTime& wave) {
  const Length shared = std::min(reach.from, wave.from) - std::max(reach.to, wave.to);
  return std::max(shared, Length{});
}

// The typed wave time that covers most of the reach; of equals, the one for the shortest path.
const WaveTime* typed_for(const River& river, const Reach& reach) {
  const WaveTime* best = nullptr;
  for (const WaveTime& wave : river.wave_times) {
    if (!(wave.from > wave.to) || !(overlap(reach, wave) > Length{})) continue;
    const bool better = best == nullptr || overlap(reach, wave) > overlap(reach, *best) ||
                        (overlap(reach, wave) == overlap(reach, *best) && wave.from - wave.to < best->from - best->to);
    if (better) best = &wave;
  }
  return best;
}

// Slope of the bed: typed, else what Manning's formula asks for at this flow.
double slope(const River& river, const Reach& reach, const Channel& channel, Discharge q) {
  if (reach.named_reach && river.reaches[*reach.named_reach].slope)
    return std::max(1e-5, *river.reaches[*reach.named_reach].slope);
  const double v = in_metres_per_second(mean_speed(channel, q));  // m/s
  const double d = in_metres(mean_depth(channel, q));             // m
  return std::clamp(std::pow(kManning * v, 2.0) / std::pow(d, 4.0 / 3.0), 1e-5, 0.05);
}

}  // namespace

ReachWave reach_wave(const River& river, const Reach& reach, Discharge here, Discharge at_top) {
  const Discharge q = at_least(here);
  const Length along = reach.from - reach.to;
  ReachWave wave{{reach.length, {}, {}}, 0.0};

  if (const WaveTime* typed = typed_for(river, reach); typed != nullptr && along > Length{}) {
    const Duration whole = typed->time * std::pow(at_least(typed->at_flow) / at_least(at_top), kWaveExponent);
    wave.typed = overlap(reach, *typed) / along;
    wave.path.travel = whole * (overlap(reach, *typed) / (typed->from - typed->to));
  }
  if (reach.lake) return wave;

  const Channel channel = channel_of(river, reach, q);
  const Duration untyped = (reach.length / celerity(channel, q)) * (1.0 - wave.typed);
  wave.path.travel = wave.path.travel + untyped;
  if (!(wave.path.travel > Duration{})) return wave;
  const double speed = in_metres(reach.length) / in_seconds(wave.path.travel);                    // m/s, c
  const double area_per_length = in_metres(width(channel, q)) * slope(river, reach, channel, q);  // m, B S
  wave.path.spread = metres(in_cubic_metres_per_second(q) / (area_per_length * speed));
  return wave;
}

ReachWave reach_wave_to(const River& river, const Reach& reach, RiverPlace place, Discharge here, Discharge at_top) {
  if (place <= reach.to) return reach_wave(river, reach, here, at_top);
  const double share = std::clamp((reach.from - place) / (reach.from - reach.to), 0.0, 1.0);
  Reach part = reach;
  part.to = std::min(place, reach.from);
  part.length = reach.length * share;
  return reach_wave(river, part, here, at_top);
}

}  // namespace floatwright
