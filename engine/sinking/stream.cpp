#include "engine/sinking/stream.hpp"

#include <cmath>

namespace floatwright {

Stream::Stream(SurfaceSpeed surface, const Profile& profile, Length depth) : per_depth_(kHighest / in_metres(depth)) {
  constexpr int kNodesPerOctave = 1 << kNodeBits;
  for (std::size_t i = 0; i <= kSurface; ++i) {
    const int node = static_cast<int>(i);
    const double mantissa = 1.0 + static_cast<double>(node % kNodesPerOctave) / kNodesPerOctave;
    const double height = std::ldexp(mantissa, node / kNodesPerOctave - kOctaves) / kHighest;
    speed_[i] = in_metres_per_second(surface) * share_of_surface(profile, depth, height);
  }
  speed_[kSurface + 1] = speed_[kSurface];
  for (std::size_t i = 0; i < speed_.size(); ++i) single_[i] = static_cast<float>(speed_[i]);
}

}  // namespace floatwright
