#pragma once
// Density and viscosity of fresh water at one atmosphere, from its temperature; held at the ends outside 0 to 40 C.
// Sources: density, Tanaka et al. 2001 (CIPM); viscosity, IAPWS SR6-08 at 0.1 MPa.
#include "engine/units/unit.hpp"

namespace floatwright {

using DynamicViscosity = Quantity<-1, 1, -1>;   // Pa s
using KinematicViscosity = Quantity<2, 0, -1>;  // m2/s

[[nodiscard]] Density water_density(Temperature t);
[[nodiscard]] DynamicViscosity water_viscosity(Temperature t);

struct WaterProperties {
  Density density;
  KinematicViscosity viscosity;
};
[[nodiscard]] WaterProperties water_at(Temperature t);

}  // namespace floatwright
