#pragma once
// Where a holding fish takes a fly: a layer over the bed, as thick as the fish sees and can reach, thinner in cold,
// coloured or fast water, and empty where fish cannot hold.
//   z_hold = min(0.25 m, 0.12 h);  u_h = shelter u(z_hold);  V_f = 0.73 m/s gV(T)
//   R = max(0.15 m, R0 gT gC sqrt(max(0, 1 - (u_h/V_f)^2)))        form: Hughes & Dill 1990, from memory
// Temperature unknown: gT = gV = 1. Clarity unknown: clear.
#include "engine/choice/judgement.hpp"
#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"
#include "engine/units/measured.hpp"
#include "engine/water/profile.hpp"

namespace floatwright {

struct Lie {
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Bed bed = Bed::Unknown;
  Measured<Temperature> temperature;
  Measured<Turbidity> clarity;
};

struct Zone {
  Length depth;         // h, of the water
  Length hold;          // z_hold, height of the fish over the bed
  Length reach;         // R
  Speed speed_at_hold;  // u_h, what the fish swims against
  double presence = 1;  // p: fish leave water they cannot hold in
};

[[nodiscard]] Zone zone(const Lie& lie, Method method, const ZoneJudgement& judgement);

// w of a sunk fly at this height over the bed (a negative height is the bed), 0 to 1.
[[nodiscard]] double share_at(const Zone& zone, Length height, const ZoneJudgement& judgement);

// w of a fly on the surface: whether a fish comes up for it; in a listed hatch every fish that is there does.
[[nodiscard]] double share_on_top(const Zone& zone, bool hatch, const ZoneJudgement& judgement);

}  // namespace floatwright
