#include "engine/water/lane_law.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kSameFlow = 1.05;  // ratio of flows that count as one
constexpr double kLeastRise = 0.2,
                 kMostRise = 3.0;  // bounds of a fitted factor: beyond them the notes contradict each other
constexpr double kLeastF = 0.1, kMostF = 0.8;

bool is_usable(const WaterNote& note) {
  return note.at_flow > Discharge{} && note.depth > Length{} && note.surface_speed >= SurfaceSpeed{};
}

// Later of two notes at one flow; the one typed last where the days don't decide.
bool replaces(const WaterNote& later_typed, const WaterNote& earlier_typed) {
  return !earlier_typed.seen_on || (later_typed.seen_on && *later_typed.seen_on >= *earlier_typed.seen_on);
}

std::vector<WaterNote> one_per_flow(const std::vector<WaterNote>& notes) {
  std::vector<WaterNote> kept;
  for (const auto& note : notes) {
    if (!is_usable(note)) continue;
    const auto same = std::ranges::find_if(kept, [&](const WaterNote& k) {
      return note.at_flow / k.at_flow < kSameFlow && k.at_flow / note.at_flow < kSameFlow;
    });
    if (same == kept.end()) {
      kept.push_back(note);
    } else if (replaces(note, *same)) {
      *same = note;
    }
  }
  std::ranges::sort(kept, {}, &WaterNote::at_flow);
  return kept;
}

double channel_depth(const LaneLaw& law, Discharge q) { return in_metres(mean_depth(law.channel, q)); }  // D, m

// Height of the surface, m: only differences mean anything.
double level(const LaneLaw& law, Discharge q) {
  if (law.surface.empty()) return channel_depth(law, q);
  const auto height = surface_height(law.surface, q);
  return height.has_value() ? in_metres(*height) : channel_depth(law, q);
}

// Least squares of y on x with intercept: the slope.
double slope(const std::vector<double>& x, const std::vector<double>& y) {
  double mx = 0.0, my = 0.0, sxx = 0.0, sxy = 0.0;
  const auto n = static_cast<double>(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    mx += x[i] / n;
    my += y[i] / n;
  }
  for (std::size_t i = 0; i < x.size(); ++i) {
    sxx += (x[i] - mx) * (x[i] - mx);
    sxy += (x[i] - mx) * (y[i] - my);
  }
  return sxy / sxx;
}

void fit(LaneLaw& law) {
  std::vector<double> surface, depth, ln_flow, ln_depth;  // m, m, ln(m3/s), ln(m)
  for (const auto& note : law.notes) {
    surface.push_back(level(law, note.at_flow));
    depth.push_back(in_metres(note.depth));
    ln_flow.push_back(std::log(in_cubic_metres_per_second(note.at_flow)));
    ln_depth.push_back(std::log(depth.back()));
  }
  if (law.notes.size() >= 2) law.rise_factor = std::clamp(slope(surface, depth), kLeastRise, kMostRise);
  if (law.notes.size() >= 3) law.f = std::clamp(slope(ln_flow, ln_depth), kLeastF, kMostF);
}

// The note above a flow, when there is one below it too.
std::optional<std::size_t> bracket(const LaneLaw& law, Discharge q) {
  for (std::size_t i = 1; i < law.notes.size(); ++i) {
    if (law.notes[i - 1].at_flow <= q && q <= law.notes[i].at_flow) return i;
  }
  return std::nullopt;
}

// Unit discharge of the lane over that of the channel at a note: d0 v0 / (V0 D0) [-].
double share_of_unit_discharge(const LaneLaw& law, const WaterNote& note) {
  const double channel = in_metres_per_second(mean_speed(law.channel, note.at_flow)) * channel_depth(law, note.at_flow);
  return in_metres(note.depth) * in_metres_per_second(note.surface_speed) / channel;
}

double share_at(const LaneLaw& law, Discharge q) {
  const auto upper = bracket(law, q);
  if (!upper) return share_of_unit_discharge(law, nearest_note(law, q));
  const auto& a = law.notes[*upper - 1];
  const auto& b = law.notes[*upper];
  const double along = std::log(q / a.at_flow) / std::log(b.at_flow / a.at_flow);
  return (1.0 - along) * share_of_unit_discharge(law, a) + along * share_of_unit_discharge(law, b);
}

}  // namespace

std::optional<LaneLaw> lane_law(const Water& water, const Channel& channel, const SurfaceLaw& surface) {
  LaneLaw law{one_per_flow(water.notes), channel, surface, 1.0, channel.f};
  if (law.notes.empty()) return std::nullopt;
  fit(law);
  return law;
}

const WaterNote& nearest_note(const LaneLaw& law, Discharge q) {
  return *std::ranges::min_element(law.notes, {},
                                   [&](const WaterNote& n) { return std::abs(std::log(q / n.at_flow)); });
}

Length lane_depth(const LaneLaw& law, Discharge q) {
  if (const auto upper = bracket(law, q)) {
    const auto& a = law.notes[*upper - 1];
    const auto& b = law.notes[*upper];
    const double low = level(law, a.at_flow), high = level(law, b.at_flow);  // m
    const double along = high > low ? (level(law, q) - low) / (high - low) : 0.5;
    return a.depth * (1.0 - along) + b.depth * along;
  }
  const auto& note = nearest_note(law, q);
  const double d0 = in_metres(note.depth);                                                           // m
  const double rise = law.rise_factor * (level(law, q) - level(law, note.at_flow));  // m
  if (q >= note.at_flow) return metres(d0 + rise);
  return metres(std::max(d0 + rise, d0 * std::pow(q / note.at_flow, law.f)));
}

SurfaceSpeed lane_speed(const LaneLaw& law, Discharge q) {
  const double channel = in_metres_per_second(mean_speed(law.channel, q)) * channel_depth(law, q);  // V D, m2/s
  return surface_metres_per_second(share_at(law, q) * channel / in_metres(lane_depth(law, q)));
}

}  // namespace floatwright
