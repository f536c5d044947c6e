#pragma once
// What each rod could carry through the day and what that would bring in each water: the table under the choice of
// rods.
#include <optional>
#include <vector>

#include "engine/choice/choose.hpp"
#include "engine/choice/rigging.hpp"

namespace floatwright {

// One thing a rod could carry, and what it brings.
struct Load {
  Carried carried;
  std::vector<std::optional<std::size_t>> use;  // by water: index into its `scored`; none where it does not fish
  std::vector<double> gain;  // by water: minutes x W x min(1, Z/(0.9 best Z)), and a trace to settle equal ones
};

struct RodLoads {
  std::size_t rod = 0;      // index into Tackle::rods
  std::vector<Load> loads;  // those that are the rod's best for most minutes first; never empty
};

// W alone stops growing where a method fishes half its time, and would leave the slower of two rigs for one method as
// good as the better: what a rod brings is W as far as its seconds are within a tie of the most that any rod has by
// that method in that water, and less in proportion. Equal ones: a line made for the method, then less of a sinking
// part, then seconds. Rods on which something fishes, the first to be taken of equals first (engine/tackle/precedence.hpp).
// A load that another with the same line and leader matches or beats in every water is left out: the two cost the same to
// come from and go to, so nothing is lost.
[[nodiscard]] std::vector<RodLoads> rod_loads(const std::vector<WaterMinutes>& waters, const Tackle& tackle,
                                              const Judgement& judgement);

}  // namespace floatwright
