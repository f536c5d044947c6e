#include "engine/sinking/section.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace floatwright {
namespace {

constexpr double kFastest = 5.0;  // m/s, over any line's rate; a bracket only

// Root of a function known to change sign once between the ends.
template <class F>
double root_between(const F& f, double low, double high) {
  std::uintmax_t steps = 100;
  const auto [a, b] =
      boost::math::tools::toms748_solve(f, low, high, boost::math::tools::eps_tolerance<double>(45), steps);
  return 0.5 * (a + b);
}

}  // namespace

Measured<Speed> rate_for_weight(ForcePerLength weight, Length diameter, const WaterProperties& water) {
  if (!(diameter > Length{})) return Absent{"the section has no diameter"};
  const double w = std::abs(weight.si());  // N/m
  if (w == 0.0) return Speed{};
  const NormalDrag drag(diameter, water);
  const auto surplus = [&](double u) { return drag.at(metres_per_second(u)).si() - w; };
  if (!(surplus(kFastest) > 0.0)) return Absent{"the section is heavier than any line"};
  const double u = root_between(surplus, 0.0, kFastest);  // m/s
  return metres_per_second(std::copysign(u, weight.si()));
}

ForcePerLength weight_for_rate(Speed rate, Length diameter, const WaterProperties& water) {
  const ForcePerLength drag = NormalDrag(diameter, water).at(metres_per_second(std::abs(rate.si())));
  return rate < Speed{} ? drag * -1.0 : drag;
}

ForcePerLength weight_for_density(Density density, Length diameter, const WaterProperties& water) {
  const double d = in_metres(diameter);                      // m
  const double surplus = density.si() - water.density.si();  // kg/m3
  return ForcePerLength::from_si(surplus * kStandardGravity * std::numbers::pi * d * d / 4.0);
}

Measured<Speed> sink_rate(Density density, Length diameter, const WaterProperties& water) {
  return rate_for_weight(weight_for_density(density, diameter, water), diameter, water);
}

Measured<Speed> sink_rate(LinearDensity mass, Length diameter, const WaterProperties& water) {
  if (!(diameter > Length{})) return Absent{"the section has no diameter"};
  const double area = std::numbers::pi * diameter.si() * diameter.si() / 4.0;  // m2
  return sink_rate(kilograms_per_cubic_metre(mass.si() / area), diameter, water);
}

Measured<Section> section_for(LinearDensity mass, Speed rate, const WaterProperties& water) {
  if (!(mass > LinearDensity{})) return Absent{"the line's weight per length is not above 0"};
  if (!(rate > Speed{})) return Absent{"the line's sink rate is not above 0"};
  const double m = mass.si();                                           // kg/m
  const double rho = water.density.si();                                // kg/m3
  const double widest = std::sqrt(4.0 * m / (std::numbers::pi * rho));  // m, weightless in water
  const auto surplus = [&](double d) {
    const double weight = (m - rho * std::numbers::pi * d * d / 4.0) * kStandardGravity;  // N/m
    return weight - weight_for_rate(rate, metres(d), water).si();
  };
  const double thinnest = 1e-9 * widest;
  if (!(surplus(thinnest) > 0.0)) return Absent{"no line of this weight sinks so fast"};
  const double d = root_between(surplus, thinnest, widest);     // m
  const double density = m / (std::numbers::pi * d * d / 4.0);  // kg/m3
  return Section{metres(d), kilograms_per_cubic_metre(density), density > kOptimisticDensity.si()};
}

}  // namespace floatwright
