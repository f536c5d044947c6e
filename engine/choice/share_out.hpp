#pragma once
// Rods shared out among boats, a rod in one boat only, so that what they are worth together is most. A combinatorial
// assignment: what a boat's rods are worth is not the sum of the rods, since one rod may stand in for another.
#include <cstddef>
#include <functional>
#include <vector>

namespace floatwright {

using RodNumbers = std::vector<std::size_t>;  // rising

struct Sharing {
  std::vector<std::size_t> alike;  // by rod: the first rod that brings every boat the same as this one, or itself
  std::vector<std::size_t> most;   // by boat: how many rods it takes at most
  // By boat, rod and water: what the rod could bring there at most. A set is worth at most the sum over the waters of the
  // best of its rods: the nearer, the fewer sets are asked for their worth.
  std::vector<std::vector<std::vector<double>>> best;
  std::function<double(std::size_t boat, const RodNumbers& rods)> worth;  // 0 for none, never less with one more; dear
};

struct Shared {
  std::vector<RodNumbers> rods;  // by boat
  double worth = 0.0;
  double at_most = 0.0;  // no way of sharing is worth more: `worth`, but for rounding, when the search came to its end
};

inline constexpr long kSharingSteps = 20'000'000;  // under a second

// The best there is; beyond so many steps the best found, and how much better another could be. Rods that bring nothing
// stay where they are. The same question has the same answer.
//
// With a price on each rod a boat by itself takes the set that is worth most over its prices, and what these are over
// them together with the prices of all rods is no less than any sharing is worth (Lagrange's relaxation). Where prices are
// such that this is least, the sets of the best sharing are each but little worse at these prices than their boat's best
// set, and their shortfalls and the prices of the rods left over add up to what the bound is too high. So ways are tried
// with a small sum of shortfalls, then a larger one, and the first that has a way has the best.
[[nodiscard]] Shared shared_out(const Sharing& sharing, long steps = kSharingSteps);

}  // namespace floatwright
