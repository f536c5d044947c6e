#include "engine/sinking/pulled_cast.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "engine/sinking/rigged_line.hpp"
#include "engine/sinking/settle.hpp"
#include "engine/sinking/swing_course.hpp"

namespace floatwright {
namespace {

// Judgement.
constexpr double kSlackSink = 0.9;         // of the still-water rate: 0.87 to 0.99 in a chain of nodes
constexpr double kRelaxation = 0.7;        // tau U_rel / L
constexpr double kTangentialDrag = 0.012;  // on the wetted area
constexpr Fineness kCoarse{6, 10, 12};     // within 0.6 % of the fly's depth of steps ten times finer
constexpr Length kClose = millimetres(2.0);
constexpr std::size_t kNodes = 6;
constexpr double kLeastDepth = 1e-3;  // m, for the logarithm

struct Depths {
  double fly = 0.0, tip = 0.0;  // m
};

// All that stays the same through one cast.
struct Cast {
  RiggedLine line;
  HungWeight hung;
  WaterProperties properties;
  Stream stream;
  double boat, past;  // m/s: of the boat over the ground; of the surface past the boat, either way
  double tip_rate;    // m/s, of the sinking part, 0 without one
  double tau_length;  // m, of the part that takes up its angle
  bool whole_line;
};

double sign_of(double value) { return value < 0.0 ? -1.0 : 1.0; }

// The tight line's velocity over the ground: led round by its belly, drawn in by the strip.
LineVelocity tight_velocity(const Cast& cast, const Moment& at) {
  const double sine = std::sin(at.bearing.si()), cosine = std::cos(at.bearing.si());
  const double led = 1.5 * std::abs(cast.past) * sine, strip = at.strip.si();  // m/s
  return {metres_per_second(cast.boat + sign_of(cast.past) * (led * sine - strip * cosine)),
          metres_per_second(-led * cosine - strip * sine)};
}

// Of the surface water past a tight line.
double relative_speed(const Cast& cast, const Moment& at) {
  const double u = std::abs(cast.past), theta = at.bearing.si();
  return std::hypot(u * std::cos(theta) + at.strip.si(), 0.5 * u * std::sin(theta));
}

Measured<Depths> steady_depths(const Cast& cast, const Moment& at, Depths guess) {
  const UpwardLine line(parts_out(cast.line, at.out), cast.hung.towed, cast.properties, cast.stream, kTangentialDrag,
                        SurfaceEnd::BodyPulledUnder, kCoarse);
  const auto settled = settle(line, tight_velocity(cast, at), metres(guess.fly), kClose);
  if (!settled) return Absent{settled.why_absent()};
  return Depths{settled->fly_depth.si(), std::max(0.0, settled->shot.tip_depth.si())};
}

// Progress of a leg of the course: how much relative speed and length have changed so far. Steady depth runs smoothly
// in it, where in time it would not.
std::vector<double> progress_of(const Cast& cast, std::span<const Moment> leg) {
  std::vector<double> progress{0.0};
  for (std::size_t i = 1; i < leg.size(); ++i) {
    const double u = relative_speed(cast, leg[i]), before = relative_speed(cast, leg[i - 1]);
    const double speed_change = std::abs(u - before) / std::max({u, before, 0.01});
    const double length_change = std::abs(leg[i].out / leg[i - 1].out - 1.0);
    progress.push_back(progress.back() + speed_change + length_change + 1e-6);
  }
  return progress;
}

struct Node {
  double progress;
  Depths depths;
};

// Linear in the logarithm of depth, as progress is near that of speed and length: steady depth is close to a power law.
double between(const std::vector<Node>& nodes, double progress, double Depths::*depth) {
  std::size_t i = 1;
  while (i + 1 < nodes.size() && nodes[i].progress < progress) ++i;
  const Node &a = nodes[i - 1], &b = nodes[i];
  const double width = b.progress - a.progress;
  const double way = width > 0.0 ? (progress - a.progress) / width : 1.0;
  const double from = std::max(a.depths.*depth, kLeastDepth), to = std::max(b.depths.*depth, kLeastDepth);
  return from * std::pow(to / from, way);
}

// The steady depths at every moment of a tight leg, strip unchanged in it.
Measured<std::vector<Depths>> steady_along(const Cast& cast, std::span<const Moment> leg) {
  const std::vector<double> progress = progress_of(cast, leg);
  std::vector<Node> nodes;
  Depths guess{0.5, 0.5};
  for (std::size_t k = 0; k < kNodes; ++k) {
    const double wanted = progress.back() * static_cast<double>(k) / static_cast<double>(kNodes - 1);
    const auto at = std::lower_bound(progress.begin(), progress.end(), wanted * (1.0 - 1e-12));
    const auto i = std::min(static_cast<std::size_t>(at - progress.begin()), leg.size() - 1);
    if (!nodes.empty() && progress[i] == nodes.back().progress) continue;
    const auto depths = steady_depths(cast, leg[i], guess);
    if (!depths) return Absent{depths.why_absent()};
    guess = *depths;
    nodes.push_back({progress[i], *depths});
  }
  if (nodes.size() == 1) nodes.push_back(nodes.front());
  std::vector<Depths> along;
  for (const double p : progress) along.push_back({between(nodes, p, &Depths::fly), between(nodes, p, &Depths::tip)});
  return along;
}

// One step of a depth towards its steady one.
double relaxed(double depth, double steady, double tau_rate, double sink_rate, double dt) {
  const double most = kSlackSink * sink_rate * dt;  // m
  if (steady <= depth) return steady + (depth - steady) * std::exp(-tau_rate * dt);
  // A flat line sinks as if slack, and no more where it lies at its angle.
  const double rate = std::max(tau_rate, kSlackSink * sink_rate / std::max(steady, 1e-6));  // 1/s
  return depth + std::min((steady - depth) * (1.0 - std::exp(-rate * dt)), most);
}

Depths tight_step(const Cast& cast, const Moment& at, Depths now, Depths steady, double dt) {
  const double length = cast.whole_line ? std::max(0.1, at.out.si() - cast.line.leader.length.si()) : cast.tau_length;
  const double tau_rate = relative_speed(cast, at) / (kRelaxation * length);  // 1/s
  const double fly_rate = std::max(cast.tip_rate, cast.hung.towed.sink_rate.si());
  return {relaxed(now.fly, steady.fly, tau_rate, fly_rate, dt),
          relaxed(now.tip, steady.tip, tau_rate, cast.tip_rate, dt)};
}

Depths slack_step(const Cast& cast, Depths now, double dt) {
  const double leader = cast.line.leader.length.si();  // m
  const double deepest = cast.whole_line || !cast.line.sinking ? 1e6 : cast.line.sinking->length.si();
  const double tip = std::min(now.tip + kSlackSink * cast.tip_rate * dt, deepest);
  const double fly = now.fly + kSlackSink * cast.hung.towed.sink_rate.si() * dt;
  return {std::clamp(fly, std::max(0.0, tip - leader), tip + leader), tip};
}

// Pace of the fly over the ground and through the water at its depth. Slack, it drifts between the speed of the line
// on the surface and that of the water around it.
CastSample sample(const Cast& cast, const Moment& at, Depths depths) {
  const double water = cast.stream.at(metres(depths.fly)).si();  // m/s
  const double surface = cast.stream.at_surface().si();          // m/s
  CastSample out{at.t, metres(depths.fly), metres(depths.tip), {}, {}, at.bearing};
  if (at.slack) {
    const double drift = 0.5 * (surface + water);
    out.over_ground = metres_per_second(std::abs(drift));
    out.through_water = metres_per_second(std::abs(drift - water));
    return out;
  }
  const LineVelocity v = tight_velocity(cast, at);
  out.over_ground = metres_per_second(std::hypot(v.along.si(), v.across.si()));
  out.through_water = metres_per_second(std::hypot(v.along.si() - water, v.across.si()));
  return out;
}

// Steady depths for every moment; slack ones keep 0 and are not asked. A leg ends where the line comes tight or is
// pulled.
Measured<std::vector<Depths>> steady_through(const Cast& cast, const SwingCourse& course) {
  const std::span<const Moment> moments(course.moments);
  std::vector<Depths> steady(moments.size());
  for (std::size_t from = 0; from < moments.size();) {
    std::size_t to = from + 1;
    while (to < moments.size() && moments[to].slack == moments[from].slack && moments[to].strip == moments[from].strip)
      ++to;
    if (!moments[from].slack) {
      const auto leg = steady_along(cast, moments.subspan(from, to - from));
      if (!leg) return Absent{leg.why_absent()};
      std::copy(leg->begin(), leg->end(), steady.begin() + static_cast<std::ptrdiff_t>(from));
    }
    from = to;
  }
  return steady;
}

Measured<CastPath> path_of(const Cast& cast, const SwingCourse& course) {
  const auto steady = steady_through(cast, course);
  if (!steady) return Absent{steady.why_absent()};
  CastPath path{{}, course.hang_down, cast.line.leader.length, Length{}};
  path.samples.reserve(course.moments.size() - course.landed);
  Depths now;
  for (std::size_t i = 0; i < course.moments.size(); ++i) {
    const Moment& at = course.moments[i];
    if (i > 0) {
      const double dt = at.t.si() - course.moments[i - 1].t.si();  // s
      now = course.moments[i - 1].slack ? slack_step(cast, now, dt) : tight_step(cast, at, now, (*steady)[i], dt);
    }
    if (i >= course.landed) path.samples.push_back(sample(cast, at, now));
  }
  return path;
}

}  // namespace

Measured<CastPath> pulled_cast(const Tackle& tackle, const Rig& rig, const Technique& technique, const CastWater& water,
                               Length cast_length) {
  const WaterProperties properties = water_at(water.temperature);
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, properties);
  if (!hung) return Absent{hung.why_absent()};
  const auto line = rigged_line(tackle, rig, technique.method, cast_length);
  if (!line) return Absent{line.why_absent()};
  if (!(cast_length > line->least_out)) return Absent{"the cast is no longer than the line that stays out"};

  const SinkingPart sinking = sinking_part(tackle, rig);
  const double boat = water.boat.si(), surface = water.surface_speed.si();  // m/s
  const Cast cast{*line,
                  *hung,
                  properties,
                  Stream(water.surface_speed, water.profile, water.depth),
                  boat,
                  surface - boat,
                  sinking.sink_rate.si(),
                  (line->sinking ? line->sinking->length : line->leader.length).si(),
                  sinking.whole_line};
  const Speed past = metres_per_second(std::abs(cast.past));
  if (technique.method == Method::Swing) return path_of(cast, swing_course(technique.mending, past, cast_length));
  if (!(technique.strip > Speed{})) return Absent{"no speed of stripping is given"};
  return path_of(cast, strip_course(technique.count, technique.strip, past, cast_length, line->least_out));
}

}  // namespace floatwright
