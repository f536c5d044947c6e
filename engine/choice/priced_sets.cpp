#include "engine/choice/priced_sets.hpp"

#include <algorithm>
#include <numeric>

namespace floatwright {
namespace {

constexpr double kRounding = 1e-9;  // min

// Sets in the order of a tree, a rod more at each step down. What a rod adds is never more where there are more rods
// already, so a branch whose rods, each added alone, can't reach `least` has no set that does.
class SetTree {
 public:
  SetTree(const PricedSets::Best& best, std::size_t waters, std::size_t most, const Prices& prices, const RodCounts& left)
      : best_(best), most_(most), prices_(prices), left_(left), order_(best.size()) {
    std::vector<double> alone;
    for (std::size_t kind = 0; kind < best.size(); ++kind)
      alone.push_back(std::accumulate(best[kind].begin(), best[kind].end(), -prices[kind]));
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::ranges::stable_sort(order_, std::ranges::greater{}, [&](std::size_t kind) { return alone[kind]; });
    covered_.assign(most + 1, std::vector<double>(waters, 0.0));
    added_.assign(most + 1, std::vector<double>(best.size()));
    reach_.assign(most + 1, std::vector<double>(best.size() + 1));
  }

  // visit(set in the tree's order, what it is over its prices at most) returns the least asked for from then on.
  template <class Visit>
  void walk(double least, long looks, Visit visit) {
    least_ = least;
    looks_ = looks;
    step(visit, 0, 0.0);
  }
  // What a set that was not looked at is over its prices at most; nothing where the looks sufficed.
  [[nodiscard]] std::optional<double> beyond() const { return beyond_; }

 private:
  template <class Visit>
  void step(Visit& visit, std::size_t from, double over) {
    --looks_;
    if (over >= least_) least_ = visit(set_, over);
    const std::size_t depth = set_.size();
    if (depth == most_) return;
    look_ahead(depth, from);
    for (std::size_t place = from; place < order_.size(); ++place) {
      const std::size_t kind = order_[place];
      const double then = over + added_[depth][place], reach = then + reach_[depth][place + 1];
      if (reach < least_ - kRounding) continue;
      if (std::ranges::count(set_, static_cast<std::uint16_t>(kind)) >= left_[kind]) continue;
      if (looks_ <= 0) {
        beyond_ = std::max(reach, beyond_.value_or(reach));
        continue;
      }
      std::ranges::transform(covered_[depth], best_[kind], covered_[depth + 1].begin(),
                             [](double a, double b) { return std::max(a, b); });
      set_.push_back(static_cast<std::uint16_t>(kind));
      step(visit, place, then);
      set_.pop_back();
    }
  }

  // What each kind from a place on would add, and what the best of those from each place on could add together after one.
  void look_ahead(std::size_t depth, std::size_t from) {
    const std::vector<double>& covered = covered_[depth];
    std::vector<double> &added = added_[depth], &reach = reach_[depth];
    const std::size_t room = most_ - depth - 1;
    top_.clear();
    double sum = 0.0;
    reach[order_.size()] = 0.0;
    for (std::size_t place = order_.size(); place-- > from;) {
      const std::vector<double>& best = best_[order_[place]];
      double more = -prices_[order_[place]];
      for (std::size_t water = 0; water < covered.size(); ++water) more += std::max(0.0, best[water] - covered[water]);
      added[place] = more;
      if (more > 0.0 && room > 0) {
        top_.insert(std::ranges::upper_bound(top_, more, std::ranges::greater{}), more);
        sum += more;
        if (top_.size() > room) sum -= top_.back(), top_.pop_back();
      }
      reach[place] = sum;
    }
  }

  const PricedSets::Best& best_;
  std::size_t most_;
  const Prices& prices_;
  const RodCounts& left_;
  std::vector<std::size_t> order_;            // kinds, the best alone first
  std::vector<std::vector<double>> covered_;  // by depth and water
  std::vector<std::vector<double>> added_;    // by depth and place
  std::vector<std::vector<double>> reach_;    // by depth and place
  std::vector<double> top_;                   // falling
  KindSet set_;
  double least_ = 0.0;
  long looks_ = 0;
  std::optional<double> beyond_;
};

KindSet rising(KindSet set) {
  std::ranges::sort(set);
  return set;
}

}  // namespace

double price_of(const KindSet& set, const Prices& prices) {
  double sum = 0.0;
  for (const std::uint16_t kind : set) sum += prices[kind];
  return sum;
}

bool can_be_made_of(const RodCounts& left, const KindSet& set) {
  for (std::size_t i = 0; i < set.size();) {
    std::size_t next = i;
    while (next < set.size() && set[next] == set[i]) ++next;
    if (left[set[i]] < static_cast<int>(next - i)) return false;
    i = next;
  }
  return true;
}

double PricedSets::worth(const KindSet& set) {
  if (set.empty()) return 0.0;
  const auto [found, is_new] = known_.try_emplace(set, 0.0);
  if (is_new) found->second = ask_(set);
  return found->second;
}

// Of those whose worth is known, or was looked at before.
BestPriced PricedSets::best_met_with(const Prices& prices, const RodCounts& left) const {
  BestPriced best;
  const auto look_at = [&](const KindSet& set, double worth) {
    const double over = worth - price_of(set, prices);
    if (over > best.over && can_be_made_of(left, set)) best = {{set, over}, 0.0};
  };
  for (const auto& [set, worth] : known_) look_at(set, worth);
  for (const auto& [set, at_most] : likely_)
    if (!known_.contains(set)) look_at(set, at_most);
  return best;
}

BestPriced PricedSets::best_at(const Prices& prices, const RodCounts& left, long looks) {
  BestPriced best = best_met_with(prices, left);
  SetTree tree(best_, waters_, most_, prices, left);
  tree.walk(best.over, looks, [&](const KindSet& found, double over) {
    if (over <= best.over) return best.over;
    KindSet set = rising(found);
    if (!known_.contains(set)) best = {{std::move(set), over}, 0.0};
    return best.over;
  });
  best.at_most = std::max(best.over, tree.beyond().value_or(best.over));
  if (!is_known(best.set)) likely_.try_emplace(best.set, best.over + price_of(best.set, prices));
  return best;
}

BestPriced PricedSets::known_best_at(const Prices& prices, const RodCounts& left, long looks) {
  while (true) {
    BestPriced best = best_at(prices, left, looks);
    if (is_known(best.set)) return best;
    worth(best.set);
  }
}

std::optional<std::vector<PricedSet>> PricedSets::all_over(double least, const Prices& prices, const RodCounts& left,
                                                           long looks) const {
  std::vector<PricedSet> result;
  SetTree tree(best_, waters_, most_, prices, left);
  tree.walk(least, looks, [&](const KindSet& found, double at_most) {
    KindSet set = rising(found);
    const auto known = known_.find(set);
    const double over = known == known_.end() ? at_most : known->second - price_of(set, prices);
    if (over >= least) result.push_back({std::move(set), over});
    return least;
  });
  if (tree.beyond()) return std::nullopt;
  std::ranges::stable_sort(result, std::ranges::greater{}, &PricedSet::over);
  return result;
}

}  // namespace floatwright
