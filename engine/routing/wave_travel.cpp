#include "engine/routing/wave_travel.hpp"

#include <algorithm>
#include <cmath>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

constexpr double kManning = 0.035;  // s/m^(1/3), clean natural bed (Chow 1959 table 5-6)
// A wave in a channel that nobody described runs faster than the guess at the channel says: over the three stretches of
// the one record at hand by 1.6, 1.0 and 1.7; releases run "at or in slight excess of" the kinematic celerity (Criss,
// Water 16, 2024, 1099, abstract). Judgement, to the early side.
constexpr double kGuessedHaste = 1.35;
constexpr Discharge kLeastFlow = Discharge::from_si(0.01);  // below it a wave time means nothing

Discharge at_least(Discharge q) { return std::max(q, kLeastFlow); }

// A piece of river whose wave was timed.
struct Timed {
  RiverPlace from, to;
  Discharge at_flow;
  Duration time;
  double exponent = kWaveExponent, spread = 1.0;
};

Length overlap(const Reach& reach, const Timed& piece) {
  const Length shared = std::min(reach.from, piece.from) - std::max(reach.to, piece.to);
  return std::max(shared, Length{});
}

const GaugeSite* gauge_of(const River& river, const std::string& id) {
  const auto found = std::find_if(river.gauges.begin(), river.gauges.end(), [&](const auto& g) { return g.id == id; });
  return found == river.gauges.end() || !found->place ? nullptr : &*found;
}

std::optional<Timed> timed_by(const River& river, const FittedLag& lag) {
  const GaugeSite* upper = gauge_of(river, lag.from);
  const GaugeSite* lower = gauge_of(river, lag.to);
  if (upper == nullptr || lower == nullptr || wave_ends_between(river, *upper->place, *lower->place))
    return std::nullopt;
  return Timed{*upper->place, *lower->place, lag.at_flow, lag.time, lag.exponent, lag.spread};
}

// The piece that covers most of the reach; of equals, the shortest.
struct Best {
  const Reach& reach;
  std::optional<Timed> piece = {};

  void consider(const Timed& other) {
    if (!(other.from > other.to) || !(overlap(reach, other) > Length{})) return;
    const bool better =
        !piece || overlap(reach, other) > overlap(reach, *piece) ||
        (overlap(reach, other) == overlap(reach, *piece) && other.from - other.to < piece->from - piece->to);
    if (better) piece = other;
  }
};

// A typed wave time where there is one, else a fitted lag.
std::optional<Timed> timed_for(const River& river, const Reach& reach) {
  Best best{reach};
  for (const WaveTime& wave : river.wave_times) best.consider({wave.from, wave.to, wave.at_flow, wave.time});
  if (best.piece) return best.piece;
  for (const FittedLag& lag : river.fitted_lags)
    if (const auto timed = timed_by(river, lag)) best.consider(*timed);
  return best.piece;
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
  ReachWave wave{{reach.length, {}, {}}};

  const auto timed = along > Length{} ? timed_for(river, reach) : std::nullopt;
  if (timed) {
    const Duration whole = travel_at(at_top, timed->time, timed->at_flow, timed->exponent);
    wave.timed = overlap(reach, *timed) / along;
    wave.path.travel = whole * (overlap(reach, *timed) / (timed->from - timed->to));
  }
  if (reach.lake) return wave;

  const Channel channel = channel_of(river, reach, q);
  wave.guessed = channel.guessed;
  const Speed wave_speed = (channel.guessed ? kGuessedHaste : 1.0) * celerity(channel, q);
  const Duration untimed = (reach.length / wave_speed) * (1.0 - wave.timed);
  wave.path.travel = wave.path.travel + untimed;
  if (!(wave.path.travel > Duration{})) return wave;
  const double speed = in_metres(reach.length) / in_seconds(wave.path.travel);                    // m/s, c
  const double area_per_length = in_metres(width(channel, q)) * slope(river, reach, channel, q);  // m, B S
  const double fitted = timed ? timed->spread : 1.0;
  wave.path.spread = metres(fitted * in_cubic_metres_per_second(q) / (area_per_length * speed));
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

WavePath wave_between(const River& river, const RiverGraph& graph, RiverPlace from, RiverPlace to, Discharge flow) {
  WavePath whole;
  for (const std::size_t reach : graph.between(from, to))
    whole = joined(whole, reach_wave_to(river, graph.reaches[reach], to, flow, flow).path);
  return whole;
}

WavePath joined(const WavePath& upper, const WavePath& lower) {
  WavePath path{upper.length + lower.length, upper.travel + lower.travel, {}};
  if (path.length > Length{})
    path.spread = upper.spread * (upper.length / path.length) + lower.spread * (lower.length / path.length);
  return path;
}

Duration travel_at(Discharge flow, Duration time, Discharge at_flow, double exponent) {
  return time * std::pow(at_least(at_flow) / at_least(flow), exponent);
}

bool wave_ends_between(const River& river, RiverPlace upper, RiverPlace lower) {
  return std::any_of(river.dams.begin(), river.dams.end(),
                     [&](const Dam& dam) { return dam.place < upper && dam.place >= lower; }) ||
         std::any_of(river.lakes.begin(), river.lakes.end(),
                     [&](const Lake& lake) { return lake.from && lake.to && *lake.to<upper&& * lake.from> lower; });
}

}  // namespace floatwright
