#pragma once
// A tackle file also lists what its owner only thinks of buying. That is judged over years of record; it never goes into a
// plan, which is given the owned part alone.
#include <set>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct ListedTackle {
  Tackle all;
  std::set<std::size_t> rods_thought_of, lines_thought_of, tips_thought_of;  // not owned: indices into the lists of `all`
};

// A line counts as owned with its rod only, a looped head with its tip only.
[[nodiscard]] bool is_owned(const ListedTackle& listed, std::size_t line, std::optional<std::size_t> tip = std::nullopt);

// What can go into a boat.
[[nodiscard]] Tackle owned_part(const ListedTackle& listed);

}  // namespace floatwright
