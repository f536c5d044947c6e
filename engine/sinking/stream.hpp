#pragma once
// The stream's speed at a depth, from a table made once per water: the solvers ask for it at every step of a line.
// Above the surface the surface's speed, below the bed the profile frozen there. Linear between 192 even nodes: within
// 0.1 % of the surface speed anywhere above 0.05 of the depth.
#include <array>

#include "engine/water/profile.hpp"

namespace floatwright {

class Stream {
 public:
  Stream(SurfaceSpeed surface, const Profile& profile, Length depth);
  [[nodiscard]] Speed at(Length below_surface) const {
    const double wanted = in_metres(below_surface) * cells_per_metre_;
    const double place = wanted > 0.0 ? (wanted < kLastCell ? wanted : kLastCell) : 0.0;
    const auto i = static_cast<std::size_t>(place);
    const double way = place - static_cast<double>(i);
    return metres_per_second(speed_[i] + way * (speed_[i + 1] - speed_[i]));
  }
  [[nodiscard]] Speed at_surface() const { return metres_per_second(speed_.front()); }

 private:
  static constexpr std::size_t kCells = 192;
  static constexpr double kLastCell = static_cast<double>(kCells);
  std::array<double, kCells + 2> speed_;  // m/s, surface to bed, the bed twice
  double cells_per_metre_;
};

}  // namespace floatwright
