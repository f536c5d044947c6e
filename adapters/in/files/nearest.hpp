#pragma once
// The known word that a mistyped one most likely meant.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

// Letters to put in, take out, change, or swap with their neighbour (restricted Damerau-Levenshtein distance).
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

// The nearest of the known words, the first of those equally near; empty when none is known.
[[nodiscard]] std::string nearest_word(std::string_view typed, const std::vector<std::string>& known);

}  // namespace floatwright
