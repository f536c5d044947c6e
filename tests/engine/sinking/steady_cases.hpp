#pragma once
// Steady cases drawn at random over all that a river and a boat offer, the same ones on every machine: the
// distributions of the standard library may differ, its generators may not.
#include <cmath>
#include <random>

#include "engine/sinking/steady.hpp"

namespace floatwright {

class SteadyCases {
 public:
  explicit SteadyCases(std::uint64_t seed) : engine_(seed) {}

  double between(double low, double high) { return low + (high - low) * share(); }
  // As many between 0.1 and 1 as between 1 and 10.
  double by_octave(double low, double high) { return low * std::pow(high / low, share()); }
  bool one_in(double n) { return share() * n < 1.0; }

  // Water 0.1 to 30 m deep, still or to 4 m/s, by all profiles; a line held or its body pulled under, drifting along or
  // across the stream in a third of the cases; flies of 2 mg to 3 g in water, on leaders of 0.2 to 5 m.
  SteadyCase next() {
    SteadyCase in;
    in.depth = metres(by_octave(0.1, 30.0));
    const double speed = one_in(10) ? 0.0 : between(0.0, 4.0);
    in.surface_speed = surface_metres_per_second(speed);
    in.profile = profile();
    in.temperature = celsius(between(0.0, 25.0));
    if (one_in(3)) in.line_along = metres_per_second(between(-0.5, 1.2) * speed);
    if (one_in(3)) in.line_across = metres_per_second(between(-1.0, 1.0));
    in.tangential_drag = between(0.006, 0.02);
    in.end = one_in(2) ? SurfaceEnd::ButtAtSurface : SurfaceEnd::BodyPulledUnder;
    in.parts = parts();
    const double weight = by_octave(2e-5, 0.03), rate = between(0.03, 1.0);  // N, m/s
    const double area = 2.0 * weight / (1000.0 * rate * rate);               // m2
    in.fly = {newtons(weight), metres_per_second(rate), square_metres(area * between(0.1, 1.0))};
    return in;
  }

 private:
  double share() { return std::ldexp(static_cast<double>(engine_() >> 11), -53); }
  Profile profile() {
    Profile out;
    const double law = share();
    if (law < 0.4) {
      out.exponent = between(0.1, 0.35);
    } else if (law < 0.75) {
      out.law = Profile::Law::Log;
      out.roughness = metres(by_octave(0.002, 0.3));
    } else {
      out.law = Profile::Law::Uniform;
    }
    return out;
  }
  std::vector<LinePart> parts() {
    std::vector<LinePart> out;
    const double nylon = 1140.0, fluorocarbon = 1780.0;  // kg/m3
    out.push_back({PartKind::Leader,
                   metres(by_octave(0.2, 5.0)),
                   millimetres(between(0.15, 0.45)),
                   kilograms_per_cubic_metre(one_in(2) ? nylon : fluorocarbon),
                   {},
                   {}});
    if (!one_in(7)) {
      const double butt = between(0.02, 0.25), end = butt * (one_in(2) ? 1.0 : between(0.75, 1.3));  // m/s
      out.push_back({PartKind::Sinking,
                     metres(by_octave(0.5, 12.0)),
                     millimetres(between(0.7, 1.4)),
                     {},
                     metres_per_second(butt),
                     metres_per_second(end)});
    }
    if (!one_in(10) || out.size() < 2)
      out.push_back({PartKind::Floating,
                     metres(between(3.0, 25.0)),
                     millimetres(between(1.0, 2.0)),
                     kilograms_per_cubic_metre(between(800.0, 950.0)),
                     {},
                     {}});
    return out;
  }
  std::mt19937_64 engine_;
};

}  // namespace floatwright
