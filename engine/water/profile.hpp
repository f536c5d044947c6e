#pragma once
// Speed over depth in one vertical: a power law (1/6 by default), a log law over a rough bed, or uniform. A person sees
// the surface, the vertical's mean is about 0.85 of it; say which is meant. z is height over the bed. Frozen below 0.02
// of the depth. The means are those of the unfrozen laws (0.2 % apart at most): power 1/(1+p), log 1 - 1/ln(30 h/ks).
// A bed rougher than the water is deep counts as ks = h.
#include "engine/units/unit.hpp"

namespace floatwright {

struct Profile {
  enum class Law { Power, Log, Uniform } law = Law::Power;
  double exponent = 1.0 / 6.0;  // Power
  Length roughness;             // ks, Log: u = (u*/0.41) ln(30 z/ks)
  friend bool operator==(const Profile&, const Profile&) = default;
};

// u(z)/u_surface for a height over the bed as a share of the depth, 0 to 1.
[[nodiscard]] double share_of_surface(const Profile& profile, Length depth, double height_share);
// U_mean/U_surface.
[[nodiscard]] double mean_over_surface(const Profile& profile, Length depth);
[[nodiscard]] SurfaceSpeed surface_speed(MeanSpeed mean, const Profile& profile, Length depth);
[[nodiscard]] MeanSpeed mean_speed(SurfaceSpeed surface, const Profile& profile, Length depth);

}  // namespace floatwright
