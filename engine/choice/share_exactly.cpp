#include <cstdint>

#include "engine/choice/share_out.hpp"

namespace floatwright {
namespace {

constexpr double kMore = 1e-9;  // min; less than that is the same
constexpr std::size_t kMostRods = 10, kMostSets = 600;

using Mask = std::uint32_t;  // which rods

struct RatedSet {
  Mask mask;
  double worth;
};

RodNumbers numbers(Mask mask) {
  RodNumbers rods;
  for (std::size_t rod = 0; mask >> rod; ++rod)
    if (mask >> rod & 1U) rods.push_back(rod);
  return rods;
}

// Every set of at most `most` rods, smaller ones first.
std::vector<Mask> sets_up_to(std::size_t rods, std::size_t most) {
  std::vector<std::vector<Mask>> by_size(most + 1);
  for (Mask mask = 0; mask < Mask{1} << rods; ++mask) {
    const std::size_t size = numbers(mask).size();
    if (size <= most) by_size[size].push_back(mask);
  }
  std::vector<Mask> all;
  for (const auto& sets : by_size) all.insert(all.end(), sets.begin(), sets.end());
  return all;
}

std::vector<RatedSet> rated(const Sharing& sharing, std::size_t boat) {
  std::vector<RatedSet> sets;
  for (const Mask mask : sets_up_to(sharing.rods, sharing.most[boat]))
    sets.push_back({mask, mask == 0 ? 0.0 : sharing.worth(boat, numbers(mask))});
  return sets;
}

}  // namespace

std::vector<RodNumbers> shared_exactly(const Sharing& sharing) {
  const std::size_t boats = sharing.most.size(), lots = std::size_t{1} << sharing.rods;
  std::vector<double> rest(lots, 0.0);  // by the rods that are left: what the boats after this one make of them
  std::vector<std::vector<Mask>> taken(boats, std::vector<Mask>(lots, 0));
  for (std::size_t boat = boats; boat-- > 0;) {
    const std::vector<RatedSet> sets = rated(sharing, boat);
    std::vector<double> best(lots);
    for (Mask left = 0; left < lots; ++left) {
      best[left] = rest[left];  // it takes none
      for (const RatedSet& set : sets) {
        if ((set.mask & left) != set.mask) continue;
        const double worth = set.worth + rest[left & ~set.mask];
        if (worth > best[left] + kMore) best[left] = worth, taken[boat][left] = set.mask;
      }
    }
    rest = std::move(best);
  }
  std::vector<RodNumbers> given;
  Mask left = static_cast<Mask>(lots - 1);
  for (std::size_t boat = 0; boat < boats; ++boat) {
    const Mask set = taken[boat][left];
    given.push_back(numbers(set));
    left &= ~set;
  }
  return given;
}

std::vector<RodNumbers> shared_out(const Sharing& sharing) {
  if (sharing.rods > kMostRods) return shared_by_trading(sharing);
  std::size_t sets = 0;
  for (const std::size_t most : sharing.most) sets += sets_up_to(sharing.rods, most).size();
  return sets > kMostSets ? shared_by_trading(sharing) : shared_exactly(sharing);
}

}  // namespace floatwright
