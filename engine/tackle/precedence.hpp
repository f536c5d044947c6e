#pragma once
// Which of things that are equal in all that is reckoned is taken. A main spool before a spare one; then what differs in
// kind as it stands in the file, so that the owner's order means something; twins, which nothing but their names tells
// apart, by name, so that their order in a list means nothing.
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct Precedence {
  std::vector<std::size_t> rods, lines, tips, flies;  // indices into the lists of Tackle, the first to be taken first
  std::vector<std::size_t> rod_kinds;                 // by rod: the first in the file that it is a twin of, or itself
};

// Rods are twins with all that is on them; marks may differ. Twins stand side by side, where the first of them is in the
// file.
[[nodiscard]] Precedence precedence(const Tackle& tackle);

// What names are sorted by: shorter ones first, so that the second stands before the tenth.
[[nodiscard]] inline std::pair<std::size_t, std::string_view> by_name(const std::string& name) { return {name.size(), name}; }

}  // namespace floatwright
