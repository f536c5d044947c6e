#pragma once
// The sets of rods that one boat may take, weighed against prices on the rods. Rods that are alike are of one kind, and a
// set says how many it has of each.
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <vector>

namespace floatwright {

using KindSet = std::vector<std::uint16_t>;  // a kind for each rod of it; rising
using Prices = std::vector<double>;          // by kind; min
using RodCounts = std::vector<int>;          // by kind

struct PricedSet {
  KindSet set;
  double over = 0.0;  // min: what it is worth over its prices; while its worth is not known what that can be at most
};
struct BestPriced : PricedSet {
  double at_most = 0.0;  // min: no set is more over its prices; more than `over` only where the looks did not suffice
};

class PricedSets {
 public:
  using Best = std::vector<std::vector<double>>;  // by kind and water: what a rod of it could bring at most
  using Worth = std::function<double(const KindSet&)>;
  PricedSets(std::size_t most, Best best, Worth worth)
      : most_(most), best_(std::move(best)), waters_(best_.empty() ? 0 : best_.front().size()), ask_(std::move(worth)) {}

  [[nodiscard]] bool is_known(const KindSet& set) const { return set.empty() || known_.contains(set); }
  double worth(const KindSet& set);  // asked for once
  // The one that is most over its prices, of those that can be made of what is left; the empty one is 0 over. A look is at
  // one set.
  [[nodiscard]] BestPriced best_at(const Prices& prices, const RodCounts& left, long looks);
  // The same, and its worth is known.
  [[nodiscard]] BestPriced known_best_at(const Prices& prices, const RodCounts& left, long looks);
  // All that are so much over their prices or more, best first; none where the looks do not suffice.
  [[nodiscard]] std::optional<std::vector<PricedSet>> all_over(double least, const Prices& prices, const RodCounts& left,
                                                               long looks) const;

 private:
  [[nodiscard]] BestPriced best_met_with(const Prices& prices, const RodCounts& left) const;

  std::size_t most_;
  Best best_;
  std::size_t waters_;
  Worth ask_;
  std::map<KindSet, double> known_;   // worth
  std::map<KindSet, double> likely_;  // once best at some prices: what it is worth at most
};

[[nodiscard]] double price_of(const KindSet& set, const Prices& prices);
// Whether as many of each kind are left.
[[nodiscard]] bool can_be_made_of(const RodCounts& left, const KindSet& set);

}  // namespace floatwright
