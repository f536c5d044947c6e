#include <bit>
#include <cstdint>

#include "engine/choice/share_out.hpp"

namespace floatwright {
namespace {

constexpr double kMore = 1e-9;  // min; less than that is the same

using Mask = std::uint32_t;  // which rods

struct RatedSet {
  Mask mask;
  double worth;  // at most, until it is known
  bool known = false;
};

RodNumbers numbers(Mask mask) {
  RodNumbers rods;
  for (std::size_t rod = 0; mask >> rod; ++rod)
    if (mask >> rod & 1U) rods.push_back(rod);
  return rods;
}

// Every set of one rod to `most` rods, smaller ones first.
std::vector<RatedSet> rated(const Sharing& sharing, std::size_t boat) {
  std::vector<RatedSet> sets;
  for (std::size_t size = 1; size <= sharing.most[boat]; ++size)
    for (Mask mask = 1; mask < Mask{1} << sharing.rods; ++mask)
      if (static_cast<std::size_t>(std::popcount(mask)) == size)
        sets.push_back({mask, sharing.at_most(boat, numbers(mask))});
  return sets;
}

// By boat: which of its sets it takes in the best way there is with these worths; none for no rod.
using Way = std::vector<RatedSet*>;

Way best_way(std::vector<std::vector<RatedSet>>& sets, std::size_t lots) {
  std::vector<double> rest(lots, 0.0);  // by the rods that are left: what the boats after this one make of them
  std::vector<std::vector<RatedSet*>> taken(sets.size(), Way(lots, nullptr));
  const Mask all = static_cast<Mask>(lots - 1);
  for (std::size_t boat = sets.size(); boat-- > 0;) {
    std::vector<double> best = rest;  // it takes none
    for (RatedSet& set : sets[boat]) {
      const Mask others = all & ~set.mask;
      for (Mask after = others;; after = (after - 1) & others) {  // every lot without the set's rods
        const double worth = set.worth + rest[after];
        double& most = best[after | set.mask];
        if (worth > most + kMore) most = worth, taken[boat][after | set.mask] = &set;
        if (after == 0) break;
      }
    }
    rest = std::move(best);
  }
  Way way;
  Mask left = all;
  for (const auto& by_lot : taken) {
    way.push_back(by_lot[left]);
    if (way.back() != nullptr) left &= ~way.back()->mask;
  }
  return way;
}

}  // namespace

std::vector<RodNumbers> shared_exactly(const Sharing& sharing) {
  std::vector<std::vector<RatedSet>> sets;
  for (std::size_t boat = 0; boat < sharing.most.size(); ++boat) sets.push_back(rated(sharing, boat));
  while (true) {
    const Way way = best_way(sets, std::size_t{1} << sharing.rods);
    bool all_known = true;
    for (std::size_t boat = 0; boat < way.size(); ++boat) {
      if (way[boat] == nullptr || way[boat]->known) continue;
      *way[boat] = {way[boat]->mask, sharing.worth(boat, numbers(way[boat]->mask)), true};
      all_known = false;
    }
    if (!all_known) continue;
    std::vector<RodNumbers> given;
    for (const RatedSet* set : way) given.push_back(set == nullptr ? RodNumbers{} : numbers(set->mask));
    return given;
  }
}

std::vector<RodNumbers> shared_out(const Sharing& sharing) {
  return sharing.rods > kSharedExactly ? shared_by_lots(sharing) : shared_exactly(sharing);
}

}  // namespace floatwright
