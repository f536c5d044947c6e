#pragma once
// A slow, fine lumped chain that the engine's fast one is held against: as plain as can be, with no sparing of time.
// Straight segments are stiff springs that only pull; drag, weight and added mass of a segment go half to each end;
// explicit steps, speeds before places. Written from the equations alone (docs/equations.md, "The line in the water");
// of the engine it uses the drag of a cylinder, a section's weight, the profile and the water's properties.
#include <vector>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/sinking/simulated_cast.hpp"
#include "engine/sinking/triple.hpp"

namespace floatwright {

// What the equations leave open, and how finely it is solved. What each is worth stands in docs/accuracy.md.
struct ReferenceChoices {
  double segment = 0.1;               // m
  double wave_speed = 400.0;          // m/s along the line: its stiffness EA = mass per length x wave speed^2
  double courant = 0.5;               // step = courant x segment / wave speed
  double spring_damping = 0.1;        // of critical
  bool drag_at_nodes = false;         // false: on each segment; true: on each node, across the mean of its two segments
  double submergence_diameters = 1.0; // thickness over which a line goes under, in diameters
  double fly_weight_share = 0.6;      // weight in water over weight in air
  enum class FlyDrag { ByAxis, ByPlane, Broadside, Towed } fly_drag = FlyDrag::ByPlane;
  double added_mass = 1.0;
  double bed_friction = 0.0;          // -, Coulomb
  double bed_rate = 100.0;            // 1/s, root of the bed's stiffness over mass
  double shift = 0.0;                 // m/s along the stream, given to water and rod alike
};

using Vec = Triple<double>;

class ReferenceChain {
 public:
  ReferenceChain(const CastCase& in, const ReferenceChoices& choices);
  struct Node {
    Vec at, velocity;
  };
  std::vector<Node> nodes;  // from the fly up; the last is the rod's tip

  void advance_to(double t);
  [[nodiscard]] CastRow row() const;
  [[nodiscard]] double energy() const;   // J, of motion and height in water, the water's own left out
  [[nodiscard]] double fastest() const;  // m/s, of any node past the rod
  [[nodiscard]] double line_out() const;  // m
  [[nodiscard]] bool stripped() const;    // all that was to be taken in is in
  [[nodiscard]] double time() const { return t_; }
  [[nodiscard]] double stretch() const;  // most of any segment, -

 private:
  struct Segment {
    double rest;         // m
    double mass;         // kg/m
    double displaced;    // kg/m of water
    double diameter;     // m
    double wetted_drag;  // kg/m2, 1/2 rho Ct pi d
    NormalDrag normal;
    bool leader;
  };
  struct Load {
    Vec force{};                    // N
    double mass = 0.0;              // kg
    double xx = 0, xy = 0, xz = 0, yy = 0, yz = 0, zz = 0;  // kg, added mass that is not there along the line
  };
  void lay_out(const CastCase& in);
  void add_segments(const LinePart& part, double from, double to);  // m up from its lower end
  void step(double dt);
  void load_segments(double top_rate);
  void load_nodes_with_drag();
  void load_fly();
  void load_bed();
  void move(double dt);
  void feed(double dt, double rate);
  [[nodiscard]] double feed_rate() const;
  [[nodiscard]] double water_speed(double depth) const;
  [[nodiscard]] double submerged(double depth, double diameter) const;
  [[nodiscard]] Vec fly_area_speed2(const Vec& past, const Vec& axis) const;
  [[nodiscard]] Vec drag_per_length(const Segment& s, const Vec& along, const Vec& past) const;

  CastCase in_;
  ReferenceChoices choices_;
  double rho_, depth_, surface_, boat_;  // kg/m3, m, m/s, m/s
  double fly_mass_, fly_broadside_;      // kg, m2
  double fed_left_ = 0.0;                // m of body that can still be fed
  double t_ = 0.0;
  std::vector<double> profile_;    // m/s, surface to bed
  std::vector<Segment> segments_;  // from the fly up: segment i joins nodes i and i + 1
  std::vector<Load> loads_;
};

// A line that has come to rest past the rod is not simulated further: its last row stands for the rest.
[[nodiscard]] SimulatedCast reference_cast(const CastCase& in, const ReferenceChoices& choices = {},
                                           Duration until = seconds(60.0));

}  // namespace floatwright
