#include "engine/sinking/settle.hpp"

#include <algorithm>

#include "engine/sinking/rising_root.hpp"

namespace floatwright {
namespace {

constexpr double kAfloat = 2e-5;  // m, over which an end is under the surface

// One line in one stream, and the last shot of it.
struct Shooting {
  const UpwardLine& line;
  const LineVelocity& velocity;
  Length out;
  bool trace;
  Shot shot{};
  Length from{};

  double end(Length depth, Force carried = {}) {
    shot = line.shoot(depth, velocity, out, carried, trace);
    from = depth;
    return in_metres(shot.end_depth);
  }
  // The shot moved to where its ends belong, and what lies between in its share.
  [[nodiscard]] Settled settled(Length depth, Force carried) {
    const Length off = depth - from, over = shot.end_depth;
    const auto move = [&](Length& place, Length up) {
      const double share = shot.line > Length{} ? up / shot.line : 1.0;
      place = place + off * (1.0 - share) - over * share;
    };
    move(shot.tip_depth, shot.line_to_tip);
    move(shot.butt_depth, shot.line_to_butt);
    for (std::size_t i = 0; i < shot.points.size(); ++i) move(shot.points[i].depth, shot.line_to[i]);
    return {depth, shot.tip_depth, shot.line, carried};
  }
};

// The fly lies on the surface, which carries some of its lift: the weight it may then hang on its line is between its
// own, below 0, and all that sinks.
Measured<Settled> settle_afloat(Shooting& shooting, double tolerance) {
  const UpwardLine& line = shooting.line;
  const auto rise = [&](double carried) { return -shooting.end(Length{}, newtons(carried)); };
  const double most = 2.0 * line.heaviness().si() + line.lift().si() + 1.0;  // N
  const auto carried = rising_root(rise, 0.0, most, line.lift().si(), tolerance);
  if (!carried) return Absent{"a line lighter than water under a fly that floats has no steady shape"};
  return shooting.settled(Length{}, newtons(*carried));
}

Measured<Settled> settle(Shooting& shooting, Length guess, Length tolerance) {
  const double close = in_metres(tolerance);  // m
  if (shooting.line.lifts() && shooting.end(Length{}) > kAfloat)
    return settle_afloat(shooting, std::max(close, kAfloat));
  const auto end = [&](double depth) { return shooting.end(metres(depth)); };
  const auto depth = rising_root(end, 0.0, in_metres(shooting.out), in_metres(guess), close);
  if (!depth && shooting.end(Length{}) > 0.0) return Absent{"the line floats and holds its fly up: it has no depth"};
  if (!depth) return Absent{"no depth of the fly brings the line's upper end to the surface"};
  return shooting.settled(metres(*depth), Force{});
}

}  // namespace

Measured<Settled> settle(const UpwardLine& line, const LineVelocity& velocity, Length out, Length guess,
                         Length tolerance) {
  Shooting shooting{line, velocity, out, false};
  return settle(shooting, guess, tolerance);
}

Measured<SettledShot> settled_shot(const UpwardLine& line, const LineVelocity& velocity, Length out, Length guess) {
  Shooting shooting{line, velocity, out, true};
  const auto settled = settle(shooting, guess, Length{});
  if (!settled) return Absent{settled.why_absent()};
  return SettledShot{*settled, std::move(shooting.shot)};
}

}  // namespace floatwright
