#pragma once
// A parcel of water on its way down, exchanging heat at the surface: dT/dt = (Te - T)/tau, tau = rho c D/K (linear
// exchange: Edinger, Duttweiler & Geyer, Water Resour. Res. 4:1137, 1968, from memory), towards an equilibrium that
// swings over the day: Te(t) = mean + a cos(wt) + b sin(wt), w one turn in 24 h of UTC. Solved in closed form. No
// longitudinal dispersion.
#include "engine/units/instant.hpp"
#include "engine/units/temperature.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

// 30 W/m2/K at the surface (20 to 45 are met; judgement), 4.186e6 J/m3/K of water.
inline constexpr double kSurfaceExchange = 30.0, kHeatOfWater = 4.186e6;
// tau: how long water this deep takes to come to 1/e of a difference.
[[nodiscard]] Duration heat_time(Length mean_depth);

// What a parcel's temperature is made of: T = start * T0 + mean * Te_mean + cosine * a + sine * b + known. Linear in
// the equilibrium's three numbers, so that these can be fitted to what is seen further down.
struct ParcelShares {
  double start = 1.0, mean = 0.0, cosine = 0.0, sine = 0.0;
  double known = 0.0;  // C, of water that has joined
};

[[nodiscard]] ParcelShares after(const ParcelShares& before, Instant enters, Duration travel, Duration heat_time);
// `share` of the mixed water is what joins: heat is conserved.
[[nodiscard]] ParcelShares mixed(const ParcelShares& stem, double share, Temperature joining);

struct Equilibrium {
  Temperature mean;
  TemperatureChange cosine, sine;
};
[[nodiscard]] Temperature temperature_of(const ParcelShares& parcel, Temperature start, const Equilibrium& equilibrium);

}  // namespace floatwright
