#include "engine/water/profile.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kFrozenBelow = 0.02;       // of the depth
constexpr double kRoughnessHeights = 30.0;  // z0 = ks/30, rough bed (Nikuradse)

// ln(30 h/ks) [-]. A bed rougher than the water is deep has no log profile: it counts as ks = h.
double log_of_depth(Length roughness, Length depth) {
  const double h = in_metres(depth);       // m
  const double ks = in_metres(roughness);  // m
  return std::log(kRoughnessHeights * std::max(1.0, h / ks));
}

// A log law needs a bed: without a roughness it is the power law it stands beside.
bool is_log(const Profile& profile) { return profile.law == Profile::Law::Log && profile.roughness > Length{}; }

}  // namespace

double share_of_surface(const Profile& profile, Length depth, double height_share) {
  if (profile.law == Profile::Law::Uniform) return 1.0;
  const double z = std::clamp(height_share, kFrozenBelow, 1.0);  // z/h, -
  if (!is_log(profile)) return std::pow(z, profile.exponent);
  const double at_surface = log_of_depth(profile.roughness, depth);
  return std::max(0.0, (at_surface + std::log(z)) / at_surface);
}

double mean_over_surface(const Profile& profile, Length depth) {
  if (profile.law == Profile::Law::Uniform) return 1.0;
  if (!is_log(profile)) return 1.0 / (1.0 + profile.exponent);
  const double at_surface = log_of_depth(profile.roughness, depth);
  return (at_surface - 1.0) / at_surface;
}

SurfaceSpeed surface_speed(MeanSpeed mean, const Profile& profile, Length depth) {
  return surface_metres_per_second(in_metres_per_second(mean) / mean_over_surface(profile, depth));
}

MeanSpeed mean_speed(SurfaceSpeed surface, const Profile& profile, Length depth) {
  return mean_metres_per_second(in_metres_per_second(surface) * mean_over_surface(profile, depth));
}

}  // namespace floatwright
