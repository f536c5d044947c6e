#pragma once
// One set of rods through the day: a dynamic programme over (water, what each rod carries). A change is made between
// two waters and its minutes are lost; what is rigged at launch costs nothing.
#include <vector>

#include "engine/choice/rod_load.hpp"

namespace floatwright {

// Which load each rod of the set carries in each water: [water][rod of the set].
using Carriage = std::vector<std::vector<std::size_t>>;

struct RodSetDay {
  double worth = 0.0;  // minutes x W less minutes lost
  Carriage carriage;
};

[[nodiscard]] RodSetDay best_day(const std::vector<const RodLoads*>& set, std::size_t waters,
                                 const ChangesJudgement& judgement);
// Its worth alone; and what it is not over, as if changes cost nothing.
[[nodiscard]] double best_worth(const std::vector<const RodLoads*>& set, std::size_t waters,
                                const ChangesJudgement& judgement);
[[nodiscard]] double worth_at_most(const std::vector<const RodLoads*>& set, std::size_t waters);

}  // namespace floatwright
