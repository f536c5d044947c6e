#pragma once
// Which of things that are equal in all that is reckoned is taken: by what they are, never by their place in the file. A main
// spool before a spare one, the lighter rod, the shorter tip, the lighter fly; twins, which nothing but their names tells
// apart, by name.
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct Precedence {
  std::vector<std::size_t> rods, lines, tips, flies;  // indices into the lists of Tackle, the first to be taken first
  std::vector<std::size_t> rod_kinds;                 // by rod: equal for twins alone
};

// Rods are twins with all that is on them; marks may differ. Twins stand side by side, and lines of one rod within main and
// spare spools.
[[nodiscard]] Precedence precedence(const Tackle& tackle);

// What names are sorted by: shorter ones first, so that the second stands before the tenth.
[[nodiscard]] inline std::pair<std::size_t, std::string_view> by_name(const std::string& name) { return {name.size(), name}; }

}  // namespace floatwright
