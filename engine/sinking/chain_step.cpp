// One step of the chain: joints move freely under weight, drag and what holds them at the surface and the bed; then the
// pieces pull them together.
#include <algorithm>
#include <cmath>

#include "engine/sinking/chain.hpp"
#include "engine/sinking/cylinder_drag.hpp"

namespace floatwright {
namespace {

namespace stdx = std::experimental;

constexpr double kBedStiffness = 250.0;  // N/m2 per metre of line: a sinking line lies some millimetres deep in it
// A sideways swing of joint against joint has the stiffness 4 T/l and is stable from 0.75 of it as mass over step
// squared; 1 stops it dead. Of pulls from both sides, 2 T/l.
constexpr double kStabler = 2.0;
constexpr double kNoLength = 1e-9;      // m
constexpr double kHeldTogether = 0.02;  // m that a piece may be too long when a step is taken for good
constexpr int kMostAttempts = 4;        // at a step, when a line comes tight of a sudden
constexpr int kMostRounds = 8;  // of pulling the pieces to their lengths, each along where the last one left them
constexpr int kMostPasses = 6;  // of finding out which pieces are slack

// Drag coefficient of a cylinder; the table's ends beyond it but for a line that hardly moves.
double coefficient(const DragTable& drags, double reynolds) {
  if (reynolds >= DragTable::kLeast) return drags.at(std::min(reynolds, DragTable::kMost));
  return reynolds > 1e-9 ? cylinder_drag_coefficient(reynolds) : 0.0;
}

template <class Real>
[[gnu::always_inline]] inline Real root(const Real& squared) {
  return stdx::sqrt(stdx::max(squared, Real(0)));
}

}  // namespace

template <class Real>
[[gnu::always_inline]] inline Real Chain<Real>::drag_coefficient(const Real& reynolds) const {
  if constexpr (Real::size() > 1) {
    const Real least(static_cast<Scalar>(DragTable::kLeast)), most(static_cast<Scalar>(DragTable::kMost));
    if (stdx::all_of(reynolds >= least)) {
      return between_nodes<DragTable::kNodeBits, DragTable::kFirstOctave>(stdx::min(reynolds, most),
                                                                          [&](auto) { return drags_->nodes(); });
    }
  }
  return Real([&](auto lane) { return static_cast<Scalar>(coefficient(*drags_, of_lane(reynolds, lane))); });
}

template <class Real>
[[gnu::always_inline]] inline typename Chain<Real>::Place Chain<Real>::tangent(std::size_t joint) const {
  const Place chord = joints_[joint + 1].at - joints_[joint > 0 ? joint - 1 : 0].at;
  const Real length = root(dot(chord, chord));
  Place t = Real(1) / stdx::max(length, Real(static_cast<Scalar>(kNoLength))) * chord;
  const auto none = length < Real(static_cast<Scalar>(kNoLength));
  stdx::where(none, t.along) = Real(1);
  return t;
}

template <class Real>
[[gnu::always_inline]] inline typename Chain<Real>::Place Chain<Real>::Mobility::of(const Place& impulse) const {
  const Place moved = square * impulse + Real(more_along * dot(impulse, tangent)) * tangent;
  if (!is_held) return moved;
  return moved - Real(held_by * dot(impulse, held)) * held;
}

// A fly is drawn level through the water nose first and sinks broadside: each part of its speed meets its own area, so
// that it sinks alone at its own rate and hangs on a tight line as in the steady shape. kg/s, the mean of last and new.
template <class Real>
void Chain<Real>::find_fly_drag(const Place& past) {
  const Scalar half_density = static_cast<Scalar>(0.5 * density_);
  const Scalar towed = half_density * static_cast<Scalar>(line_.fly.towed);
  const Scalar broadside = half_density * static_cast<Scalar>(line_.fly.broadside);
  const Real level = root(past.along * past.along + past.across * past.across);
  fly_drag_.level = Scalar(0.5) * (fly_drag_.level + towed * level);
  fly_drag_.down = Scalar(0.5) * (fly_drag_.down + broadside * stdx::abs(past.down));
}

// Of the pieces at a joint: tension over length, N/m.
template <class Real>
Real Chain<Real>::pull(std::size_t joint) const {
  const Real above = tension_[joint] * by_length_[joint];
  return joint > 0 ? Real(above + tension_[joint - 1] * by_length_[joint - 1]) : above;
}

// Drag on a joint, kg/s, the mean of the last and the new.
template <class Real>
void Chain<Real>::meet_water(std::size_t joint) {
  const Lump& lump = lumps_[joint];
  Joint& now = joints_[joint];
  Mobility& mobility = mobility_[joint];
  mobility.in_water = stdx::clamp(Real(Real(1) + now.at.down * static_cast<Scalar>(1.0 / kSkin)), Real(0), Real(1));
  mobility.stream = stream(now.at.down);
  const Place past{mobility.stream - now.velocity.along, -now.velocity.down, -now.velocity.across};
  const Real past_along = dot(past, mobility.tangent);
  const Real past_across = root(dot(past, past) - past_along * past_along);
  const Real cd = drag_coefficient(past_across * lump.reynolds);
  now.across_drag = Scalar(0.5) * (now.across_drag + lump.across_drag * cd * past_across);
  now.along_drag = Scalar(0.5) * (now.along_drag + lump.along_drag * stdx::abs(past_along));
  if (joint == 0) find_fly_drag(past);
}

template <class Real>
void Chain<Real>::move_freely(std::size_t joint, double step) {
  const Scalar dt = static_cast<Scalar>(step);
  const Scalar per_skin = static_cast<Scalar>(1.0 / kSkin), g = static_cast<Scalar>(kStandardGravity);
  const Lump& lump = lumps_[joint];
  Joint& now = joints_[joint];
  Mobility& mobility = mobility_[joint];
  const Real zero(0), one(1), in_water = mobility.in_water, u = mobility.stream;
  const Place t = mobility.tangent;
  Real across_drag = in_water * now.across_drag, along_drag = in_water * now.along_drag, fly_down(0);
  if (joint == 0) {
    across_drag += in_water * fly_drag_.level;
    along_drag += in_water * fly_drag_.level;
    fly_down = in_water * (fly_drag_.down - fly_drag_.level);
  }

  // Masses, kg; what a strong pull would do to a light joint is held by more of it.
  const Real across_mass =
      lump.mass + in_water * lump.displaced + static_cast<Scalar>(kStabler * step * step) * pull(joint);
  const Real along_mass(lump.mass);
  mobility.square = one / (across_mass + dt * across_drag);
  mobility.more_along = one / (along_mass + dt * along_drag) - mobility.square;

  // Weight, N; the surface gives up what it does not cover, the bed pushes back. Both as springs, N/m.
  const Real above = one - in_water;
  Real weight = lump.weight + lump.displaced * g * above;
  Real spring(0);
  stdx::where(above > zero && above < one, spring) = Real(lump.displaced * (g * per_skin));
  if (has_bed_) {
    const Real stiffness = static_cast<Scalar>(kBedStiffness) * lump.length;
    const auto on_bed = now.at.down > depth_;
    stdx::where(on_bed, weight) = weight - stiffness * (now.at.down - depth_);
    stdx::where(on_bed, spring) = stiffness;
  }

  // Impulse, N s, of all that is known at the step's start.
  const Real along_more =
      (along_mass - across_mass) * dot(now.velocity, t) + dt * (along_drag - across_drag) * u * t.along;
  Place impulse = across_mass * now.velocity + along_more * t;
  impulse.along += dt * across_drag * u;
  impulse.down += dt * weight;
  const Real held = dt * dt * spring + dt * fly_down;
  mobility.is_held = false;
  if (stdx::any_of(held != zero)) {
    mobility.held = mobility.of({zero, one, zero});
    mobility.held_by = held / (one + held * mobility.held.down);
    mobility.is_held = true;
  }
  now.at = now.at + dt * mobility.of(impulse);
}

// Impulses of the pieces in this round, N s: those of taut pieces make their lengths right, slack ones give back what
// they have pulled. Rows of slack ones are 1 x = -pulled. A piece that would come to push is slack, and all is solved
// again.
template <class Real>
void Chain<Real>::solve_impulses(double dt) {
  const std::size_t n = length_.size();
  const Real zero(0), one(1), per_step(static_cast<Scalar>(1.0 / dt));
  for (int pass = 0; pass < kMostPasses; ++pass) {
    Real below(0), impulse(0), ratio(0);  // of the row before
    for (std::size_t j = 0; j < n; ++j) {
      const Real row = taut_[j] * below;
      const Real by_pivot = one / (one - taut_[j] + taut_[j] * diagonal_[j] - row * ratio);
      const Real wanted = taut_[j] * stretch_[j] * per_step - (one - taut_[j]) * pulled_[j];
      impulse = impulse_[j] = (wanted - row * impulse) * by_pivot;
      below = coupled_[j];
      ratio = ratio_[j] = taut_[j] * below * by_pivot;
    }
    for (std::size_t j = n - 1; j-- > 0;) impulse_[j] -= ratio_[j] * impulse_[j + 1];
    bool all_pull = true;
    for (std::size_t j = 0; j < n; ++j) {
      const auto pushes = taut_[j] > zero && pulled_[j] + impulse_[j] < zero;
      if (stdx::none_of(pushes)) continue;
      all_pull = false;
      stdx::where(pushes, taut_[j]) = zero;
    }
    if (all_pull) return;
  }
  for (std::size_t j = 0; j < n; ++j) impulse_[j] = stdx::max(impulse_[j], -pulled_[j]);
}

// One round: pieces pull along the directions that the joints' places give them now. False, and nothing is done, when
// none is longer than it may be.
template <class Real>
bool Chain<Real>::pull_together(double step, double may_stretch, bool first) {
  const std::size_t n = length_.size();
  const Scalar dt = static_cast<Scalar>(step);
  const Real zero(0), one(1), least(static_cast<Scalar>(kNoLength));
  Real most(0);  // m, stretch
  for (std::size_t j = 0; j < n; ++j) {
    const Place chord = joints_[j + 1].at - joints_[j].at;
    const Real length = root(dot(chord, chord));
    direction_[j] = one / stdx::max(length, least) * chord;
    stretch_[j] = length - length_[j];
    most = stdx::max(most, stretch_[j]);
  }
  if (!first && stdx::all_of(most < Real(static_cast<Scalar>(may_stretch)))) return false;
  for (std::size_t j = 0; j < n; ++j) {
    taut_[j] = one;
    stdx::where(stretch_[j] <= zero && (first ? tension_[j] : pulled_[j]) <= zero, taut_[j]) = zero;
    if (first) pulled_[j] = zero;
    moved_low_[j] = mobility_[j].of(direction_[j]);
    moved_high_[j] = j + 1 < n ? mobility_[j + 1].of(direction_[j]) : Place{zero, zero, zero};
    diagonal_[j] = dot(direction_[j], moved_low_[j]) + dot(direction_[j], moved_high_[j]);
    if (j > 0) coupled_[j - 1] = -dot(direction_[j], moved_high_[j - 1]);
  }
  coupled_[n - 1] = zero;
  solve_impulses(step);
  for (std::size_t j = 0; j < n; ++j) {
    joints_[j].at = joints_[j].at + Real(dt * impulse_[j]) * moved_low_[j];
    if (j + 1 < n) joints_[j + 1].at = joints_[j + 1].at - Real(dt * impulse_[j]) * moved_high_[j];
    pulled_[j] += impulse_[j];
  }
  return true;
}

// Whether every joint was heavy enough for the pulls that were found (kStabler says how heavy).
template <class Real>
bool Chain<Real>::held_steady(double dt) const {
  constexpr double kEnough = 0.75 * kStabler;
  const Real share(static_cast<Scalar>(kEnough * dt * dt));
  for (std::size_t i = 0; i < mobility_.size(); ++i) {
    if (stdx::any_of(share * pull(i) * mobility_[i].square > Real(1))) return false;
  }
  return true;
}

// Whether no piece was left far too long.
template <class Real>
bool Chain<Real>::held_together() const {
  const Real may(static_cast<Scalar>(kHeldTogether));
  for (std::size_t j = 0; j < length_.size(); ++j) {
    const Place chord = joints_[j + 1].at - joints_[j].at;
    if (!stdx::all_of(root(dot(chord, chord)) < length_[j] + may)) return false;
  }
  return true;
}

// From where the joints are; their velocities still are those before.
template <class Real>
void Chain<Real>::try_step(double dt, double may_stretch) {
  // Each for all joints, so that none waits for its own roots and quotients.
  for (std::size_t i = 0; i < mobility_.size(); ++i) mobility_[i].tangent = tangent(i);
  for (std::size_t i = 0; i < mobility_.size(); ++i) meet_water(i);
  for (std::size_t i = 0; i < mobility_.size(); ++i) move_freely(i, dt);
  for (int round = 0; round < kMostRounds && pull_together(dt, may_stretch, round == 0); ++round) {
  }
}

// One step, done again with the stronger pulls that it found; false where the line came apart.
template <class Real>
bool Chain<Real>::step_whole(double dt, double may_stretch) {
  const Real per_step(static_cast<Scalar>(1.0 / dt));
  for (int attempt = 0; attempt < kMostAttempts; ++attempt) {
    if (attempt > 0) {
      joints_ = before_;
      fly_drag_ = fly_drag_before_;
    }
    try_step(dt, may_stretch);
    for (std::size_t j = 0; j < length_.size(); ++j) {
      const Real found = per_step * pulled_[j];
      tension_[j] = attempt > 0 ? stdx::max(tension_[j], found) : found;
    }
    if (held_steady(dt)) break;
  }
  return held_together();
}

template <class Real>
void Chain<Real>::step(double dt, double may_stretch, int halvings) {
  before_ = joints_;
  fly_drag_before_ = fly_drag_;
  tension_before_ = tension_;
  if (!step_whole(dt, may_stretch) && halvings > 0) {
    joints_ = before_;
    fly_drag_ = fly_drag_before_;
    tension_ = tension_before_;
    step(0.5 * dt, may_stretch, halvings - 1);
    step(0.5 * dt, may_stretch, halvings - 1);
    return;
  }
  const Real per_step(static_cast<Scalar>(1.0 / dt));
  for (std::size_t j = 0; j < length_.size(); ++j) tension_[j] = per_step * pulled_[j];
  for (std::size_t i = 0; i < length_.size(); ++i) joints_[i].velocity = per_step * (joints_[i].at - before_[i].at);
}

template class Chain<Alone>;
template class Chain<Abreast>;

}  // namespace floatwright
