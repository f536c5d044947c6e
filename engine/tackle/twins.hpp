#pragma once
// Rods that are alike with all that is on them, as an outfitter has them: what is reckoned for one holds for the others.
#include <cstddef>
#include <vector>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

// By line: its like on the first twin of its rod (engine/tackle/precedence.hpp), itself where that is its own.
[[nodiscard]] std::vector<std::size_t> lines_of_first_twins(const Tackle& tackle);

}  // namespace floatwright
