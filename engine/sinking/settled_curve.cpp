#include "engine/sinking/settled_curve.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/settle.hpp"

namespace floatwright {
namespace {

constexpr Length kClose = millimetres(40.0);  // and corrected, see settle()
constexpr double kSlowest = 0.01;             // m/s past a line

double key_of(Length out, Speed past_it) { return out.si() / std::max(kSlowest, past_it.si()); }

// Cubic between two nodes from their depths and slopes.
double between(double key, double from, double to, double a, double slope_a, double b, double slope_b) {
  const double width = to - from, t = (key - from) / width, rest = 1.0 - t;
  return rest * rest * ((1.0 + 2.0 * t) * a + t * width * slope_a) +
         t * t * ((1.0 + 2.0 * rest) * b - rest * width * slope_b);
}

// Slope at a node between two chords: theirs where they agree in direction, weighted to the nearer, so that the curve
// never turns between nodes (Fritsch and Butland's harmonic mean).
double node_slope(double before, double after, double width_before, double width_after) {
  if (before * after <= 0.0) return 0.0;
  const double w1 = 2.0 * width_after + width_before, w2 = width_after + 2.0 * width_before;
  return (w1 + w2) / (w1 / before + w2 / after);
}

}  // namespace

Measured<SettledCurve> SettledCurve::through(const PulledLine& line, std::span<const Moment> moments) {
  SettledCurve curve;
  Length guess = metres(0.5);
  for (const Moment& at : moments) {
    const auto settled = settle(line.upward, tight_velocity(line, at), at.out, guess, kClose);
    if (!settled) return Absent{settled.why_absent()};
    guess = settled->fly_depth;
    curve.line_taken_ = std::max(curve.line_taken_, settled->line.si());
    const double tip = std::max(0.0, settled->tip_depth.si());
    curve.nodes_.push_back({key_of(at.out, relative_speed(line, at)), {settled->fly_depth.si(), 0.0}, {tip, 0.0}});
  }
  std::ranges::sort(curve.nodes_, {}, &Node::key);
  const auto same = std::ranges::unique(curve.nodes_, {}, &Node::key);
  curve.nodes_.erase(same.begin(), same.end());
  curve.add_slopes(&Node::fly);
  curve.add_slopes(&Node::tip);
  return curve;
}

void SettledCurve::add_slopes(Value Node::*value) {
  const std::size_t n = nodes_.size();
  if (n < 2) return;
  const auto width = [&](std::size_t i) { return nodes_[i + 1].key - nodes_[i].key; };
  const auto chord = [&](std::size_t i) {
    return ((nodes_[i + 1].*value).depth - (nodes_[i].*value).depth) / width(i);
  };
  for (std::size_t i = 1; i + 1 < n; ++i)
    (nodes_[i].*value).slope = node_slope(chord(i - 1), chord(i), width(i - 1), width(i));
  // At the ends a parabola's, held to turn nowhere.
  const auto end = [&](double chord_there, double slope_beyond) {
    const double slope = 1.5 * chord_there - 0.5 * slope_beyond;
    return slope * chord_there <= 0.0 ? 0.0 : slope;
  };
  (nodes_.front().*value).slope = n == 2 ? chord(0) : end(chord(0), (nodes_[1].*value).slope);
  (nodes_.back().*value).slope = n == 2 ? chord(0) : end(chord(n - 2), (nodes_[n - 2].*value).slope);
}

Depths SettledCurve::at(Length out, Speed past_it) const {
  const double key = std::clamp(key_of(out, past_it), nodes_.front().key, nodes_.back().key);
  std::size_t i = 1;
  while (i + 1 < nodes_.size() && nodes_[i].key < key) ++i;
  if (nodes_.size() == 1) return {metres(nodes_[0].fly.depth), metres(nodes_[0].tip.depth)};
  const Node &a = nodes_[i - 1], &b = nodes_[i];
  const auto read = [&](const Value& from, const Value& to) {
    return metres(between(key, a.key, b.key, from.depth, from.slope, to.depth, to.slope));
  };
  return {read(a.fly, b.fly), read(a.tip, b.tip)};
}

}  // namespace floatwright
