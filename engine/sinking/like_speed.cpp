#include "engine/sinking/like_speed.hpp"

#include <algorithm>
#include <cmath>

#include "engine/sinking/fishing_table.hpp"

namespace floatwright {
namespace {

// Mean square of the speed past a line, over the surface speed squared; its scale is left out.
double past_the_line(const Profile& profile, Length depth, double pace, double lowest_share) {
  constexpr int kParts = 4;
  double sum = 0.0;
  for (int i = 0; i < kParts; ++i) {
    const double down = (i + 0.5) / kParts;  // of the line's depth
    const double past = share_of_surface(profile, depth, 1.0 - down * lowest_share) - pace;
    sum += down * past * past;
  }
  return sum;
}

}  // namespace

SurfaceSpeed like_speed(SurfaceSpeed surface, const Profile& profile, Length depth, double pace, Length lies) {
  constexpr double kSlowest = 0.5, kFastest = 2.0;  // of the surface speed: no table is stretched further
  const double lowest = std::clamp(lies / depth, 0.0, 1.0);
  const double here = past_the_line(profile, depth, pace, lowest);
  const double tabled = past_the_line(kTableProfile, depth, pace, lowest);
  if (!(tabled > 0.0)) return surface;
  return std::clamp(std::sqrt(here / tabled), kSlowest, kFastest) * surface;
}

}  // namespace floatwright
