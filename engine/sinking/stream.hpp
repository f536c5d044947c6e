#pragma once
// The stream's speed at a depth, from a table made once per water: the solvers ask for it at every step of a line.
// Above the surface the surface's speed, below the bed the profile frozen there. Linear between nodes that stand closer
// toward the bed, where the speed falls fastest: a double's exponent and first four bits of mantissa are the node of a
// height over the bed, scaled so that nodes lie where profiles are frozen and at the surface. Within 0.03 % of the
// speed there.
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "engine/water/profile.hpp"

namespace floatwright {

class Stream {
 public:
  Stream(SurfaceSpeed surface, const Profile& profile, Length depth);
  [[nodiscard]] Speed at(Length below_surface) const {
    const double height = kHighest - in_metres(below_surface) * per_depth_;
    const double held = height > kLowest ? (height < kHighest ? height : kHighest) : kLowest;
    const auto bits = std::bit_cast<std::uint64_t>(held);
    const std::size_t i = (bits >> kRestBits) - kFirst;
    const double way = static_cast<double>(bits & (kRest - 1)) * (1.0 / static_cast<double>(kRest));
    return metres_per_second(speed_[i] + way * (speed_[i + 1] - speed_[i]));
  }
  [[nodiscard]] Speed at_surface() const { return metres_per_second(speed_[kSurface]); }

  // The same in single precision, from the first node on, and what takes a depth to a height among them.
  static constexpr double kLowest = 0x1p-6, kHighest = 0.78125;  // of 0.02 and 1 of the depth; 1.5625 2^-1
  static constexpr int kNodeBits = 4, kOctaves = 6;
  [[nodiscard]] const float* nodes() const { return single_.data(); }
  [[nodiscard]] double per_depth() const { return per_depth_; }  // 1/m

 private:
  static constexpr int kRestBits = 52 - kNodeBits, kExponentBias = 1023;
  static constexpr std::uint64_t kRest = std::uint64_t{1} << kRestBits;
  static constexpr std::uint64_t kFirst = static_cast<std::uint64_t>(kExponentBias - kOctaves) << kNodeBits;
  static constexpr std::size_t kSurface = ((kOctaves - 1) << kNodeBits) + 9;  // 1.5625 = 1 + 9/16
  std::array<double, kSurface + 2> speed_;                                    // m/s, bed to surface, the surface twice
  std::array<float, kSurface + 2> single_;
  double per_depth_;                                                          // 1/m, kHighest over the depth
};

}  // namespace floatwright
