#pragma once
// Prices on the rods of a pool at which boats that each take what is worth most over its prices ask for little more than
// there is. Lagrange's relaxation by subgradients with the step of B. T. Polyak, Minimization of unsmooth functionals
// (1969; from memory): prices rise for what is asked for too often and fall for what is left, by a step in proportion to
// how far the bound may still fall.
#include <vector>

#include "engine/choice/priced_sets.hpp"

namespace floatwright {

struct PricedPool {
  Prices prices;
  std::vector<double> best;  // by boat: what its best set is over its prices
  double bound = 0.0;        // no sharing is worth more

  std::vector<KindSet> way;  // by boat: the best sharing met with on the way
  double worth = 0.0;        // of it
};

[[nodiscard]] PricedPool priced_pool(std::vector<PricedSets>& boats, const RodCounts& there_are);

}  // namespace floatwright
