#include <algorithm>
#include <cmath>
#include <iterator>

#include "engine/river/shares.hpp"
#include "engine/water/channel.hpp"
#include "engine/water/described.hpp"
#include "engine/water/gauge_near.hpp"
#include "engine/water/known_channel.hpp"
#include "engine/water/surveyed_section.hpp"

namespace floatwright {
namespace {

// Judgement.
constexpr double kThreadOverMeanSpeed = 1.25;  // the boat's thread over the mean of the whole channel
constexpr double kBankfullSpeed = 1.5;         // m/s

bool is_through_water(WaterType type) { return type != WaterType::Bank && type != WaterType::Eddy; }

bool tells_the_channel(const Water& water) {
  if (water.notes.empty() || !is_through_water(water.type)) return false;
  const auto& note = water.notes.front();
  return note.at_flow > Discharge{} && note.depth > Length{} && note.surface_speed > SurfaceSpeed{};
}

// The runs among the waters, else all other through water.
std::vector<Water> telling_waters(const std::vector<Water>& waters) {
  std::vector<Water> telling;
  std::ranges::copy_if(waters, std::back_inserter(telling), tells_the_channel);
  const auto is_run = [](const Water& w) { return w.type == WaterType::Run; };
  if (std::ranges::any_of(telling, is_run)) std::erase_if(telling, [&](const Water& w) { return !is_run(w); });
  return telling;
}

bool complete(const ChannelMeasurement& m) {
  return m.discharge > Discharge{} && m.width > Length{} && m.mean_depth > Length{} && m.mean_speed > MeanSpeed{};
}

std::optional<Thread> thread_of(const StretchNote& note) {
  if (!note.float_time || *note.float_time <= Duration{} || note.from <= note.to) return std::nullopt;
  if (note.at_flow <= Discharge{}) return std::nullopt;
  return Thread{(note.from - note.to) / *note.float_time, note.at_flow};
}

std::vector<Water> brought_to(const River& river, const Reach& reach, const std::vector<Water>& typed) {
  std::vector<Water> waters;
  for (const auto& water : typed) waters.push_back(water_in(river, reach, water));
  return waters;
}

struct FittedNear {
  Channel channel;
  Length away;
};

// Of the nearest gauge with a law; of its sections the one visited most, which stands first.
std::optional<FittedNear> fitted_near(const River& river, const Reach& reach) {
  if (river.fitted_channels.empty()) return std::nullopt;
  for (const auto& [gauge, away] : gauges_of_one_flow(river, reach)) {
    const auto fit = std::ranges::find(river.fitted_channels, river.gauges[gauge].id, &FittedChannel::gauge);
    if (fit == river.fitted_channels.end()) continue;
    return FittedNear{{fit->a, fit->b, fit->c, fit->f, fit->k, fit->m, false, fit->least, fit->most}, away};
  }
  return std::nullopt;
}

Channel as_a_guess(Channel channel) {
  channel.guessed = true;
  return channel;
}

}  // namespace

std::optional<Channel> channel_from_note(const std::vector<Water>& waters, std::optional<Thread> thread) {
  const auto telling = telling_waters(waters);
  double weights = 0.0, depth = 0.0, speed = 0.0, ln_flow = 0.0;  // -, m, m/s (surface), ln(m3/s)
  for (const auto& water : telling) {
    const double w = std::max(0.01, water.fishing_time);
    const auto& note = water.notes.front();
    weights += w;
    depth += w * in_metres(note.depth);
    speed += w * in_metres_per_second(note.surface_speed);
    ln_flow += w * std::log(in_cubic_metres_per_second(note.at_flow));
  }
  if (telling.empty()) return std::nullopt;

  const double q = std::exp(ln_flow / weights);           // m3/s
  const double d = depth / weights / kLaneOverMeanDepth;  // m
  double fast = kMeanOverSurface * speed / weights;       // m/s
  if (thread) {
    const double then = in_cubic_metres_per_second(thread->at_flow);  // m3/s
    fast = in_metres_per_second(thread->speed) * std::pow(q / then, Channel{}.m);
  }
  const double v = fast / kThreadOverMeanSpeed;  // m/s
  return channel_through({cubic_metres_per_second(q), metres(q / (d * v)), metres(d), mean_metres_per_second(v)});
}

Channel channel_from_area(Area drainage) {
  const double a = std::max(0.1, in_square_metres(drainage) / 1e6);  // A, km2
  const double w = 2.70 * std::pow(a, 0.352);                        // bankfull width, m
  const double d = 0.30 * std::pow(a, 0.213);                        // bankfull mean depth, m
  Channel channel = channel_through(
      {cubic_metres_per_second(w * d * kBankfullSpeed), metres(w), metres(d), mean_metres_per_second(kBankfullSpeed)});
  channel.guessed = true;
  return channel;
}

Channel channel_from_flow(Discharge usual) {
  const double q = std::max(0.001, in_cubic_metres_per_second(usual));  // m3/s
  Channel channel = channel_through({cubic_metres_per_second(q), metres(6.5 * std::pow(q, 0.5)),
                                     metres(0.22 * std::pow(q, 0.4)), mean_metres_per_second(0.70 * std::pow(q, 0.1))});
  channel.guessed = true;
  return channel;
}

std::optional<Channel> known_channel(const River& river, const Reach& reach) {
  const StretchNote* note = reach.note ? &river.notes[*reach.note] : nullptr;
  auto thread = note ? thread_of(*note) : std::nullopt;
  if (thread) thread->at_flow = own_flow(river, reach, thread->at_flow);
  const NamedReach* named = reach.named_reach ? &river.reaches[*reach.named_reach] : nullptr;
  if (named != nullptr) {
    const bool measured = !named->channel.empty() && std::ranges::all_of(named->channel, complete);
    if (measured) return channel_through(named->channel);
    if (!named->sections.empty()) return channel_of_sections(named->sections, named->slope);
  }
  const auto gauge = fitted_near(river, reach);
  if (gauge && gauge->away <= kGaugeSpeaksFor) return gauge->channel;
  if (named != nullptr) {
    if (const auto channel = channel_from_note(brought_to(river, reach, named->waters), thread)) return *channel;
  }
  if (note != nullptr) {
    if (const auto channel = channel_from_note(brought_to(river, reach, note->waters), thread)) return *channel;
  }
  if (gauge) return as_a_guess(gauge->channel);
  if (reach.drainage_area) return channel_from_area(*reach.drainage_area);
  return std::nullopt;
}

Channel channel_of(const River& river, const Reach& reach, Discharge typical_flow) {
  const auto known = known_channel(river, reach);
  return known ? *known : channel_from_flow(typical_flow);
}

}  // namespace floatwright
