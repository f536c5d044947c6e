#include "engine/sinking/stream.hpp"

namespace floatwright {

Stream::Stream(SurfaceSpeed surface, const Profile& profile, Length depth)
    : cells_per_metre_(static_cast<double>(kCells) / in_metres(depth)) {
  for (std::size_t i = 0; i <= kCells; ++i) {
    const double height_share = 1.0 - static_cast<double>(i) / static_cast<double>(kCells);
    speed_[i] = in_metres_per_second(surface) * share_of_surface(profile, depth, height_share);
  }
  speed_[kCells + 1] = speed_[kCells];
}

}  // namespace floatwright
