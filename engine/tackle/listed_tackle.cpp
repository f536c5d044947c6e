#include "engine/tackle/listed_tackle.hpp"

#include <algorithm>

namespace floatwright {
namespace {

template <class Thing>
std::vector<Thing> without(const std::vector<Thing>& things, const std::set<std::size_t>& thought_of) {
  std::vector<Thing> owned;
  for (std::size_t i = 0; i < things.size(); ++i)
    if (!thought_of.contains(i)) owned.push_back(things[i]);
  return owned;
}

}  // namespace

bool is_owned(const ListedTackle& listed, std::size_t line, std::optional<std::size_t> tip) {
  const std::vector<Rod>& rods = listed.all.rods;
  const auto rod = static_cast<std::size_t>(std::ranges::find(rods, listed.all.lines[line].on_rod, &Rod::id) - rods.begin());
  return !listed.lines_thought_of.contains(line) && !listed.rods_thought_of.contains(rod) &&
         !(tip && listed.tips_thought_of.contains(*tip));
}

Tackle owned_part(const ListedTackle& listed) {
  Tackle owned = listed.all;
  owned.rods = without(owned.rods, listed.rods_thought_of);
  owned.tips = without(owned.tips, listed.tips_thought_of);
  owned.lines.clear();
  for (std::size_t line = 0; line < listed.all.lines.size(); ++line)
    if (is_owned(listed, line)) owned.lines.push_back(listed.all.lines[line]);
  return owned;
}

}  // namespace floatwright
