#include "engine/sinking/settle.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace floatwright {
namespace {

constexpr int kMostShots = 80;

// Keeps the two ends of a rising function's sign change, and proposes where to look next.
class Bracket {
 public:
  Bracket(double low, double high) : low_(low), high_(high) {}
  void add(double at, double value) {
    (value < 0.0 ? low_ : high_) = at;
    before_at_ = last_at_, before_ = last_;
    last_at_ = at, last_ = value;
    ++count_;
  }
  // First by slope 1, then by the secant; halves where that leaves the bracket, and every fourth time, to be sure to
  // end.
  [[nodiscard]] double next() const {
    const double guess = corrected();
    const bool halve = count_ > 4 && count_ % 4 == 0;
    return !halve && guess > low_ && guess < high_ ? guess : 0.5 * (low_ + high_);
  }
  [[nodiscard]] double corrected() const {
    if (count_ < 2 || last_ == before_) return last_at_ - last_;
    return last_at_ - last_ * (last_at_ - before_at_) / (last_ - before_);
  }

 private:
  double low_, high_, last_at_ = 0.0, last_ = 0.0, before_at_ = 0.0, before_ = 0.0;
  int count_ = 0;
};

// Where a rising function is 0 within the tolerance; none where it is not between the ends.
template <class F>
std::optional<double> rising_root(const F& f, double low, double high, double guess, double tolerance) {
  Bracket bracket(low, high);
  double at = std::clamp(guess, low, high);
  for (int i = 0; i < kMostShots; ++i) {
    const double value = f(at);
    if (!std::isfinite(value)) return std::nullopt;
    bracket.add(at, value);
    if (std::abs(value) <= tolerance) return std::clamp(bracket.corrected(), low, high);
    at = bracket.next();
  }
  return std::nullopt;
}

// The fly lies on the surface, which carries some of its lift: the weight it may then hang on its line is between its
// own, below 0, and all that sinks.
Measured<Settled> settle_afloat(const UpwardLine& line, const LineVelocity& velocity, Length out, double tolerance) {
  Shot shot;
  const auto rise = [&](double carried) {
    shot = line.shoot(Length{}, velocity, out, newtons(carried));
    return -in_metres(shot.end_depth);
  };
  const double most = 2.0 * line.heaviness().si() + line.lift().si() + 1.0;  // N
  const auto carried = rising_root(rise, 0.0, most, line.lift().si(), tolerance);
  if (!carried) return Absent{"a line lighter than water under a fly that floats has no steady shape"};
  return Settled{Length{}, shot.tip_depth, shot.line, newtons(*carried)};
}

}  // namespace

Measured<Settled> settle(const UpwardLine& line, const LineVelocity& velocity, Length out, Length guess,
                         Length tolerance) {
  const double close = in_metres(tolerance);  // m
  if (line.lifts() && line.shoot(Length{}, velocity, out).end_depth.si() > close)
    return settle_afloat(line, velocity, out, close);
  Shot shot;
  double shot_from = 0.0;  // m
  const auto end = [&](double depth) {
    shot = line.shoot(metres(depth), velocity, out);
    shot_from = depth;
    return in_metres(shot.end_depth);
  };
  const auto depth = rising_root(end, 0.0, in_metres(out), in_metres(guess), close);
  if (!depth) return Absent{"no depth of the fly brings the line's upper end to the surface"};
  return Settled{metres(*depth), shot.tip_depth + metres(*depth - shot_from), shot.line, Force{}};
}

}  // namespace floatwright
