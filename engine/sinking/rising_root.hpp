#pragma once
// The depth at which a line's upper end comes out at the surface: the root of a function that mostly rises, with slope
// 1 in an even stream, and is dear to ask. A depth in metres goes in, a depth comes out.
#include <algorithm>
#include <cmath>
#include <optional>

namespace floatwright {

// Keeps the two ends of a rising function's sign change, and proposes where to look next.
class Bracket {
 public:
  Bracket(double low, double high) : low_(low), high_(high) {}
  void add(double at, double value) {
    (value < 0.0 ? low_ : high_) = at;
    const double slope = count_ > 0 ? (value - last_) / (at - last_at_) : 1.0;
    before_slope_ = slope > kFlattest ? slope_ : 0.0;
    if (slope > kFlattest) slope_ = slope;
    step_ = std::abs(at - last_at_);
    last_at_ = at, last_ = value;
    ++count_;
  }
  // First by slope 1, then by the secant; halves where that leaves the bracket, and every other time when it takes
  // long, to be sure to end.
  [[nodiscard]] double next() const {
    const double guess = corrected();
    const bool halve = count_ > kSoon ? count_ % 2 == 0 : count_ == kSoon / 2;
    return !halve && guess > low_ && guess < high_ ? guess : 0.5 * (low_ + high_);
  }
  [[nodiscard]] double corrected() const { return last_at_ - last_ / slope_; }
  [[nodiscard]] bool is_close() const {
    const double depth = std::max(last_at_, kShallow), left = std::abs(last_ / slope_);
    const double changed = slope_ > kSteepest ? 1.0 : std::abs(1.0 - before_slope_ / slope_);
    const double bend = std::max(changed, kLeastBend * step_ / depth);
    return count_ > 1 && left <= kNear * depth && left * bend <= kClose * depth;
  }
  // Between two depths that can no longer be told apart. The function may jump there: a line of several floating parts
  // comes level in one of them or in another.
  [[nodiscard]] bool is_narrow() const { return high_ - low_ <= kNarrow * std::max(high_, kShallow); }
  [[nodiscard]] bool has_jumped() const { return std::abs(last_) > kNear * std::max(high_, kShallow); }

 private:
  // Shares of the depth. What a correction leaves is about the share by which the slope has changed since the last one.
  static constexpr double kClose = 2e-4, kNear = 0.05, kLeastBend = 0.5;
  static constexpr double kNarrow = 1e-9;    // of the depth, between the ends of the bracket
  static constexpr double kShallow = 1e-3;   // m, counts as the depth of what lies shallower
  static constexpr double kFlattest = 1e-4;  // slope that says where the root is
  static constexpr double kSteepest = 2.0;   // slope that says how near it is
  static constexpr int kSoon = 8;            // shots
  double low_, high_, last_at_ = 0.0, last_ = 0.0, step_ = 0.0, slope_ = 1.0, before_slope_ = 1.0;
  int count_ = 0;
};

// Where it is 0, or within a tolerance of it and then corrected; none where it is not 0 between the ends.
template <class F>
std::optional<double> rising_root(const F& f, double low, double high, double guess, double tolerance) {
  constexpr int kMostShots = 100;
  Bracket bracket(low, high);
  double at = std::clamp(guess, low, high);
  for (int i = 0; i < kMostShots; ++i) {
    const double value = f(at);
    if (!std::isfinite(value)) return std::nullopt;
    bracket.add(at, value);
    if (std::abs(value) <= tolerance || bracket.is_close()) return std::clamp(bracket.corrected(), low, high);
    if (bracket.is_narrow()) return bracket.has_jumped() ? std::nullopt : std::optional(at);
    at = bracket.next();
  }
  return std::nullopt;
}

}  // namespace floatwright
