#pragma once
// The line in time: a chain of joints with the line's mass, weight and drag lumped at them, held together by pieces
// that take tension and no compression and do not stretch (docs/equations.md, "The simulated cast"). The rod's joint
// stays at the origin; the water comes at its own speed less the boat's. One chain is one cast alone, or one line cast
// alike into several waters abreast (engine/sinking/abreast.hpp).
//
// A step is implicit. Drag is linear in the new velocity, its coefficient the mean of the last and the newly found one,
// which is Heron's way to a root and so finds the sink rate of a free line exactly. Tensions then pull the joints to
// where no piece is too long, along the pieces as they would be at the step's end; a piece that would have to push is
// slack. What tension does to a joint's sideways motion would be unstable for a light joint under a strong pull: such
// a joint is made as much heavier as the step needs, a term that falls with the step squared.
#include <span>
#include <vector>

#include "engine/sinking/abreast.hpp"
#include "engine/sinking/chain_line.hpp"
#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/tabled_water.hpp"

namespace floatwright {

// Where one cast of several is fished.
struct WaterAndBoat {
  const TabledWater* water;
  Speed boat;  // of the rod over the ground, along the stream
};

template <class Real>
class Chain {
 public:
  using Place = Triple<Real>;
  struct Joint {
    Place at, velocity;            // m and m/s in the rod's frame
    Real across_drag, along_drag;  // kg/s, square to the line and along it
  };

  // `places`: one a lane, at least one, of one temperature; the last serves the lanes left. Their waters outlive the
  // chain. At the start all moves with the surface.
  Chain(const ChainLine& line, std::span<const Triple<double>> joints, std::span<const WaterAndBoat> places,
        bool has_bed);

  // s; m, how much too long a piece may be at its end. A step in which the line comes apart is taken in halves.
  void step(double dt, double may_stretch) { step(dt, may_stretch, kMostHalvings); }
  void let_out(const Real& length);  // m, at the rod
  void take_in(const Real& length);  // m, less than is out

  [[nodiscard]] Real out() const;                    // m, from the fly to the rod
  [[nodiscard]] Real past() const { return past_; }  // m/s, of the surface past the rod
  [[nodiscard]] std::size_t joints() const { return joints_.size(); }
  [[nodiscard]] const Joint& joint(std::size_t i) const { return joints_[i]; }     // from the fly up, the rod's last
  [[nodiscard]] Real tension(std::size_t piece) const { return tension_[piece]; }  // N
  [[nodiscard]] std::size_t pieces() const { return length_.size(); }
  [[nodiscard]] Real length(std::size_t piece) const { return length_[piece]; }  // m
  // Of the water at a depth, m/s along the stream past the rod.
  [[nodiscard]] Real stream(const Real& depth) const;
  // Kinetic energy of line and moved water, and that of weight and buoyancy; J.
  [[nodiscard]] Real energy() const;

 private:
  using Scalar = typename Real::value_type;
  static constexpr int kMostHalvings = 6;
  static constexpr double kSkin = 0.005;  // m over which a line that leaves the water loses its buoyancy and its drag
  struct Lump {
    Real length;                   // m of line
    Real mass, displaced, weight;  // kg, kg, N in water
    Real across_drag, along_drag;  // kg/m, over speed and Cd
    Real reynolds;                 // s/m
  };
  // What moves a joint in this step: an impulse I (N s) changes its velocity by square I + more_along (I.t) t, t the
  // tangent, less what the surface or the bed takes of it.
  struct Mobility {
    Place tangent;
    Real stream, in_water;    // m/s, share
    Real square, more_along;  // 1/kg
    Place held;               // by the surface or the bed
    Real held_by;             // kg
    bool is_held;
    [[nodiscard]] Place of(const Place& impulse) const;
  };
  struct FlyDrag {
    Real level, down;  // kg/s
  };
  [[nodiscard]] Lump lump(std::size_t joint) const;
  void lump_again(std::size_t from);
  void resize();
  void cut_the_uppermost();
  [[nodiscard]] Real buoyancy_lost(const Real& displaced, const Real& depth) const;  // J
  [[nodiscard]] Place tangent(std::size_t joint) const;
  void find_fly_drag(const Place& past);
  [[nodiscard]] Real drag_coefficient(const Real& reynolds) const;
  [[nodiscard]] Real pull(std::size_t joint) const;
  [[nodiscard]] bool held_steady(double dt) const;
  [[nodiscard]] bool held_together() const;
  void try_step(double dt, double may_stretch);
  [[nodiscard]] bool step_whole(double dt, double may_stretch);
  void step(double dt, double may_stretch, int halvings);
  void meet_water(std::size_t joint);
  void move_freely(std::size_t joint, double dt);
  bool pull_together(double dt, double may_stretch, bool first);
  void solve_impulses(double dt);

  ChainLine line_;
  std::vector<const Stream*> streams_;  // by lane
  Real per_depth_;                      // of them, 1/m
  const DragTable* drags_;
  double density_, viscosity_;
  Real boat_, past_, depth_;
  bool has_bed_;
  std::vector<Joint> joints_, before_;  // before_: at the step's start
  FlyDrag fly_drag_, fly_drag_before_;
  std::vector<Real> tension_before_;
  std::vector<Lump> lumps_;
  std::vector<Mobility> mobility_;
  std::vector<Real> length_, by_length_;  // by piece: m, 1/m
  // By piece: tension, N; then what the solver of tensions works with.
  std::vector<Real> tension_, stretch_, diagonal_, coupled_, taut_, ratio_, impulse_, pulled_;
  std::vector<Place> direction_, moved_low_, moved_high_;
};

template <class Real>
[[gnu::always_inline]] inline Real Chain<Real>::stream(const Real& depth) const {
  if constexpr (Real::size() == 1) {
    return Real(streams_.front()->at(metres(of_lane(depth, 0))).si()) - boat_;
  } else {
    const Real least(static_cast<Scalar>(Stream::kLowest)), most(static_cast<Scalar>(Stream::kHighest));
    const Real found = most - depth * per_depth_;
    Real height = least;  // of a depth that is no number too: a line may come apart
    std::experimental::where(found > least, height) = std::experimental::min(found, most);
    return between_nodes<Stream::kNodeBits, -Stream::kOctaves>(height, [&](auto lane) { return streams_[lane]->nodes(); }) -
           boat_;
  }
}

extern template class Chain<Alone>;
extern template class Chain<Abreast>;

}  // namespace floatwright
