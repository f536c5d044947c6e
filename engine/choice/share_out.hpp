#pragma once
// Rods shared out among boats, a rod in one boat only, so that what they are worth together is most. A combinatorial
// assignment: what a boat's rods are worth is not the sum of the rods, since one rod may stand in for another.
#include <cstddef>
#include <functional>
#include <vector>

namespace floatwright {

using RodNumbers = std::vector<std::size_t>;  // rising

struct Sharing {
  std::size_t rods = 0;
  std::vector<std::size_t> most;  // by boat: how many rods it takes at most
  // Worth of a set of rods in a boat: 0 for none, never less with one more. Not thread-safe: it may remember.
  std::function<double(std::size_t boat, const RodNumbers& rods)> worth;
};

// By boat. Rods that bring nothing stay where they are; of equal ways the one that gives the earlier boats the fewer and
// the earlier rods. The same question has the same answer.

// The best there is: every set of rods in every boat, over which rods are left. Time and space grow as 2^rods.
[[nodiscard]] std::vector<RodNumbers> shared_exactly(const Sharing& sharing);

// A heuristic: the rod that brings most goes first; then every two boats share what they hold anew, and trade with the rack,
// while that brings more. Against the best there is, on 400 random days of up to 4 boats and 6 rods: over 1 % short on two
// of them, at worst 4 % (tests/engine/choice/share_out_test.cpp).
[[nodiscard]] std::vector<RodNumbers> shared_by_trading(const Sharing& sharing);

// Exactly where that takes few sets, else by trading.
[[nodiscard]] std::vector<RodNumbers> shared_out(const Sharing& sharing);

}  // namespace floatwright
