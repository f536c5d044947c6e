#pragma once
// Rods that are alike with all that is on them, as an outfitter has them: what is reckoned for one holds for the others.
#include <cstddef>
#include <vector>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

// By rod: the first that it is alike, itself where none stands before it. Length, line number and the lines on it, in
// their order, are the same; ids and marks may differ.
[[nodiscard]] std::vector<std::size_t> first_twins(const Tackle& tackle);

// By line: the one in its place on the first twin of its rod.
[[nodiscard]] std::vector<std::size_t> lines_of_first_twins(const Tackle& tackle);

}  // namespace floatwright
