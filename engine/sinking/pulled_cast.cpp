#include "engine/sinking/pulled_cast.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <span>

#include "engine/sinking/settled_curve.hpp"

namespace floatwright {
namespace {

// Judgement.
constexpr double kSlackSink = 0.9;   // of the still-water rate: 0.87 to 0.99 in a chain of nodes
constexpr double kRelaxation = 0.7;  // tau U_rel / L
constexpr std::size_t kNodes = 5;    // steady shapes solved along a course

// One step of a depth towards its steady one.
double relaxed(double depth, double steady, double tau_rate, double sink_rate, double dt) {
  const double most = kSlackSink * sink_rate * dt;  // m
  if (steady <= depth) return steady + (depth - steady) * std::exp(-tau_rate * dt);
  // A flat line sinks as if slack, and no more where it lies at its angle.
  const double rate = std::max(tau_rate, kSlackSink * sink_rate / std::max(steady, 1e-6));  // 1/s
  return depth + std::min((steady - depth) * (1.0 - std::exp(-rate * dt)), most);
}

Depths tight_step(const PulledLine& line, const Moment& at, Depths now, Depths steady, Duration step) {
  const double length =  // m
      line.whole_line ? std::max(0.1, (at.out - line.line.leader.length).si()) : line.takes_its_angle.si();
  const double tau_rate = relative_speed(line, at).si() / (kRelaxation * length);  // 1/s
  const double tip_rate = line.tip_rate.si(), dt = step.si();                      // m/s, s
  const double fly_rate = std::max(tip_rate, line.hung.towed.sink_rate.si());      // m/s
  return {metres(relaxed(now.fly.si(), steady.fly.si(), tau_rate, fly_rate, dt)),
          metres(relaxed(now.tip.si(), steady.tip.si(), tau_rate, tip_rate, dt))};
}

Depths slack_step(const PulledLine& line, Depths now, Duration dt) {
  const Length leader = line.line.leader.length;
  const Length deepest = line.whole_line || !line.line.sinking ? metres(1e6) : line.line.sinking->length;
  const Length tip = std::min(now.tip + kSlackSink * (line.tip_rate * dt), deepest);
  const Length fly = now.fly + kSlackSink * (line.hung.towed.sink_rate * dt);
  return {std::clamp(fly, std::max(Length{}, tip - leader), tip + leader), tip};
}

// Pace of the fly over the ground and through the water at its depth. Slack, it drifts between the speed of the line
// on the surface and that of the water around it.
CastSample sample(const PulledLine& line, const Moment& at, Depths depths) {
  const Stream& stream = line.water->stream;
  const double water = stream.at(depths.fly).si();  // m/s
  const double surface = stream.at_surface().si();  // m/s
  CastSample out{at.t, depths.fly, depths.tip, {}, {}, at.bearing};
  if (at.slack) {
    const double drift = 0.5 * (surface + water);  // m/s
    out.over_ground = metres_per_second(std::abs(drift));
    out.through_water = metres_per_second(std::abs(drift - water));
    return out;
  }
  const LineVelocity v = tight_velocity(line, at);
  const double along = v.along.si(), across = v.across.si();  // m/s
  out.over_ground = metres_per_second(std::sqrt(along * along + across * across));
  out.through_water = metres_per_second(std::sqrt((along - water) * (along - water) + across * across));
  return out;
}

CastPath path_along(const PulledLine& line, const SwingCourse& course, const std::vector<Depths>& steady) {
  CastPath path{{}, course.hang_down, line.line.leader.length, Length{}};
  path.samples.reserve(course.moments.size() - course.landed);
  Depths now;
  for (std::size_t i = 0; i < course.moments.size(); ++i) {
    const Moment& at = course.moments[i];
    if (i > 0) {
      const Moment& before = course.moments[i - 1];
      now =
          before.slack ? slack_step(line, now, at.t - before.t) : tight_step(line, at, now, steady[i], at.t - before.t);
    }
    if (i >= course.landed) path.samples.push_back(sample(line, at, now));
  }
  return path;
}

// Moments even in the logarithm of relative speed and of line out: there are as many where much changes.
std::vector<Moment> nodes_of(const PulledLine& line, std::span<const Moment> leg) {
  const auto progress = [&](const Moment& at) {
    return std::log(std::max(0.01, relative_speed(line, at).si()) / at.out.si());
  };
  const double first = progress(leg.front()), last = progress(leg.back());
  std::vector<Moment> nodes;
  std::size_t i = 0;
  for (std::size_t k = 0; k < kNodes; ++k) {
    const double wanted = first + (last - first) * static_cast<double>(k) / static_cast<double>(kNodes - 1);
    while (i + 1 < leg.size() && progress(leg[i]) < wanted - 1e-9) ++i;
    if (nodes.empty() || leg[i].t != nodes.back().t) nodes.push_back(leg[i]);
  }
  return nodes;
}

bool same(const std::vector<Moment>& a, const std::vector<Moment>& b) {
  return std::ranges::equal(a, b, [](const Moment& x, const Moment& y) {
    return x.bearing == y.bearing && x.out == y.out && x.strip == y.strip;
  });
}

// The curves of one line, each solved once; they stay where they are.
class Curves {
 public:
  explicit Curves(const PulledLine& line) : line_(line) {}
  const Measured<SettledCurve>& through(std::vector<Moment> nodes) {
    for (const Solved& one : solved_) {
      if (same(one.nodes, nodes)) return one.curve;
    }
    auto curve = SettledCurve::through(line_, nodes);
    return solved_.emplace_back(Solved{std::move(nodes), std::move(curve)}).curve;
  }

 private:
  struct Solved {
    std::vector<Moment> nodes;
    Measured<SettledCurve> curve;
  };
  const PulledLine& line_;
  std::deque<Solved> solved_;
};

// From where a swing begins to straight downstream, even in relative speed: U_rel/U = sqrt(cos^2 + 0.25 sin^2).
std::vector<Moment> swing_nodes(Length out) {
  const double cosine = std::cos(cast_downstream().si());
  const double first = std::sqrt(0.25 + 0.75 * cosine * cosine);
  std::vector<Moment> nodes;
  for (std::size_t k = 0; k < kNodes; ++k) {
    const double share = first + (1.0 - first) * static_cast<double>(k) / static_cast<double>(kNodes - 1);
    const double bearing = std::acos(std::sqrt(std::clamp((share * share - 0.25) / 0.75, 0.0, 1.0)));
    nodes.push_back(moment(Duration{}, radians(bearing), out, false, Speed{}));
  }
  return nodes;
}

// Steady depths for every moment of a swing. A line that comes to the surface before its end settles as deep with more
// of it fed, so that one curve serves every mend.
Measured<std::vector<Depths>> steady_through_swing(const PulledLine& line, const SwingCourse& course, Length cast,
                                                   Curves& curves) {
  const Length out = course.moments.front().out;
  const auto& tight = curves.through(swing_nodes(cast));
  const bool serves = !tight || tight->line_taken() < cast;
  const auto& curve = serves ? tight : curves.through(swing_nodes(out));
  if (!curve) return Absent{curve.why_absent()};
  std::vector<Depths> steady;
  for (const Moment& at : course.moments) steady.push_back(curve->at(serves ? cast : out, relative_speed(line, at)));
  return steady;
}

// Steady depths for every moment of a retrieve; slack ones keep 0 and are not asked. A leg ends where the line comes
// tight or is pulled.
Measured<std::vector<Depths>> steady_through_strip(const PulledLine& line, const SwingCourse& course, Curves& curves) {
  const std::span<const Moment> moments(course.moments);
  std::vector<Depths> steady(moments.size());
  for (std::size_t from = 0; from < moments.size();) {
    std::size_t to = from + 1;
    while (to < moments.size() && moments[to].slack == moments[from].slack && moments[to].strip == moments[from].strip)
      ++to;
    if (!moments[from].slack) {
      const auto& curve = curves.through(nodes_of(line, moments.subspan(from, to - from)));
      if (!curve) return Absent{curve.why_absent()};
      for (std::size_t i = from; i < to; ++i) steady[i] = curve->at(moments[i].out, relative_speed(line, moments[i]));
    }
    from = to;
  }
  return steady;
}

Measured<CastPath> pulled_path(const PulledLine& line, const Technique& technique, const CastSetting& setting,
                               Curves& curves) {
  const Speed past = std::max(line.past, -line.past);
  if (technique.method == Method::Swing) {
    const SwingCourse course = swing_course(technique.mending, past, setting.cast, setting.limits);
    const auto steady = steady_through_swing(line, course, setting.cast, curves);
    return steady ? Measured(path_along(line, course, *steady)) : Absent{steady.why_absent()};
  }
  if (!(technique.strip > Speed{})) return Absent{"no speed of stripping is given"};
  const SwingCourse course =
      strip_course(technique.count, technique.strip, past, setting.cast, line.line.least_out, setting.limits);
  const auto steady = steady_through_strip(line, course, curves);
  return steady ? Measured(path_along(line, course, *steady)) : Absent{steady.why_absent()};
}

}  // namespace

std::vector<Measured<CastPath>> pulled_casts(const Tackle& tackle, const Rig& rig,
                                             std::span<const Technique> techniques, const CastSetting& setting) {
  const auto line = pulled_line(tackle, rig, techniques.front().method, setting);
  if (!line) return std::vector<Measured<CastPath>>(techniques.size(), Absent{line.why_absent()});
  Curves curves(*line);
  std::vector<Measured<CastPath>> paths;
  paths.reserve(techniques.size());
  for (const Technique& technique : techniques) paths.push_back(pulled_path(*line, technique, setting, curves));
  return paths;
}

}  // namespace floatwright
