#include "engine/water/bed_profile.hpp"

#include <optional>

namespace floatwright {
namespace {

constexpr double kRoughnessPerStone = 3.5;  // ks/D84

// ks; none: nothing is known of it.
std::optional<Length> roughness_of(Bed bed) {
  switch (bed) {
    case Bed::Sand:
      return metres(0.05);
    case Bed::Gravel:
      return kRoughnessPerStone * metres(0.05);
    case Bed::Cobble:
      return kRoughnessPerStone * metres(0.15);
    case Bed::Boulder:
      return kRoughnessPerStone * metres(0.35);
    case Bed::Wood:
    case Bed::Unknown:
      break;
  }
  return std::nullopt;
}

}  // namespace

Profile bed_profile(Bed bed, Length depth) {
  const auto roughness = roughness_of(bed);
  if (!roughness || !(depth > Length{})) return {};
  const double mean = mean_over_surface({Profile::Law::Log, 0.0, *roughness}, depth);
  return {Profile::Law::Power, 1.0 / mean - 1.0, {}};
}

}  // namespace floatwright
