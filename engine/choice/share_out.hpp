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
  // Worth of a set of rods in a boat: 0 for none, never less with one more. Dear; not thread-safe: it may remember.
  std::function<double(std::size_t boat, const RodNumbers& rods)> worth;
  // What that worth cannot be over; cheap. The nearer, the fewer sets are asked for their worth.
  std::function<double(std::size_t boat, const RodNumbers& rods)> at_most;
};

inline constexpr std::size_t kSharedExactly = 14, kSharedAtOnce = 11;  // rods: a tenth and a hundredth of a second

// By boat. Rods that bring nothing stay where they are; of equal ways the one that gives the earlier boats the fewer and
// the earlier rods. The same question has the same answer.

// The best there is: every set of rods in every boat, over which rods are left; what a set is worth at most stands for
// its worth until a best way has no such set in it. Time and space grow as 2^rods.
[[nodiscard]] std::vector<RodNumbers> shared_exactly(const Sharing& sharing);

// A heuristic for more rods: the one that brings most goes first; then as many boats as hold `at_once` rods share these
// and what lies in the rack anew, exactly, one lot of boats after the other while that brings more. How near it comes:
// docs/accuracy.md.
[[nodiscard]] std::vector<RodNumbers> shared_by_lots(const Sharing& sharing, std::size_t at_once = kSharedAtOnce);

// Exactly up to kSharedExactly rods, else by lots.
[[nodiscard]] std::vector<RodNumbers> shared_out(const Sharing& sharing);

}  // namespace floatwright
