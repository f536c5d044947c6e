#include "engine/sinking/water_properties.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

double held_celsius(Temperature t) { return std::clamp(in_celsius(t), 0.0, 40.0); }

}  // namespace

Density water_density(Temperature temperature) {
  const double t = held_celsius(temperature);  // C
  const double share = (t - 3.983035) * (t - 3.983035) * (t + 301.797) / (522528.9 * (t + 69.34881));
  return kilograms_per_cubic_metre(999.974950 * (1.0 - share));
}

DynamicViscosity water_viscosity(Temperature temperature) {
  const double r = (held_celsius(temperature) + 273.15) / 300.0;  // -, absolute temperature over 300 K
  const double micro = 280.68 * std::pow(r, -1.9) + 511.45 * std::pow(r, -7.7) + 61.131 * std::pow(r, -19.6) +
                       0.45903 * std::pow(r, -40.0);  // uPa s
  return DynamicViscosity::from_si(micro * 1e-6);
}

WaterProperties water_at(Temperature t) {
  const Density rho = water_density(t);
  return {rho, water_viscosity(t) / rho};
}

}  // namespace floatwright
