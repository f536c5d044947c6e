#include "engine/choice/share_out.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

#include "engine/choice/priced_sets.hpp"
#include "engine/choice/rod_prices.hpp"

namespace floatwright {
namespace {

constexpr double kSame = 1e-7;    // min; less than that is the same
constexpr long kStepsOfAWorth = 10'000;
constexpr long kSearchLooks = 200'000;  // at the sets of one boat

struct Kinds {
  explicit Kinds(const std::vector<std::size_t>& alike) {
    for (std::size_t rod = 0; rod < alike.size(); ++rod) {
      const auto kind = std::ranges::find_if(rods, [&](const RodNumbers& of) { return of.front() == alike[rod]; });
      if (kind == rods.end()) rods.push_back({rod});
      else kind->push_back(rod);
    }
    for (const RodNumbers& of : rods) counts.push_back(static_cast<int>(of.size()));
  }
  // The first rods of each kind, so many from `from` on, which is moved on.
  [[nodiscard]] RodNumbers named(const KindSet& set, std::vector<std::size_t>& from) const {
    RodNumbers result;
    for (const std::uint16_t kind : set) result.push_back(rods[kind][from[kind]++]);
    std::ranges::sort(result);
    return result;
  }

  std::vector<RodNumbers> rods;  // by kind
  RodCounts counts;
};

std::vector<PricedSets> boats_of(const Sharing& sharing, const Kinds& kinds) {
  std::vector<PricedSets> boats;
  for (std::size_t boat = 0; boat < sharing.most.size(); ++boat) {
    PricedSets::Best best;
    for (const RodNumbers& of : kinds.rods) best.push_back(sharing.best[boat][of.front()]);
    const auto worth = [&sharing, &kinds, boat](const KindSet& set) {
      std::vector<std::size_t> from(kinds.rods.size(), 0);
      return sharing.worth(boat, kinds.named(set, from));
    };
    boats.emplace_back(sharing.most[boat], std::move(best), worth);
  }
  return boats;
}

// Which set each boat takes so that the shortfalls add up to least.
class LeastShortfall {
 public:
  LeastShortfall(std::vector<PricedSets>& boats, const RodCounts& there_are, const PricedPool& pool, long& steps)
      : boats_(boats), pool_(pool), left_(there_are), steps_(steps), takes_(boats.size()), has_(boats.size(), false) {}

  // Whether there is a way with less; false, too, where the steps ran out.
  bool find(double limit) {
    limit_ = limit;
    found_.clear();
    sets_.clear();
    for (std::size_t boat = 0; boat < boats_.size(); ++boat) {
      auto sets = boats_[boat].all_over(pool_.best[boat] - limit, pool_.prices, left_, kSearchLooks);
      if (!sets) return steps_ = 0, false;
      sets_.push_back(std::move(*sets));
    }
    step(0, 0.0);
    return !found_.empty() || boats_.empty();
  }
  [[nodiscard]] const std::vector<KindSet>& way() const { return found_; }
  [[nodiscard]] bool is_spent() const { return steps_ <= 0; }

 private:
  struct Next {
    std::size_t boat = 0;
    double others = 0.0;  // the least that the boats after it fall short together
  };

  void step(std::size_t boats_done, double shortfall) {
    if (boats_done == boats_.size()) return close(shortfall);
    const std::optional<Next> next = next_boat(shortfall);
    if (!next) return;
    const std::size_t boat = next->boat;
    has_[boat] = true;
    for (const PricedSet& priced : sets_[boat]) {
      if (!fits(shortfall + next->others + short_of(boat, priced.over)) || is_spent()) break;
      if (!is_left(priced.set)) continue;
      if (!boats_[boat].is_known(priced.set)) steps_ -= kStepsOfAWorth;
      const double over = boats_[boat].worth(priced.set) - price_of(priced.set, pool_.prices);
      if (!fits(shortfall + next->others + short_of(boat, over))) continue;
      takes_[boat] = priced.set;
      for (const std::uint16_t kind : priced.set) --left_[kind];
      step(boats_done + 1, shortfall + short_of(boat, over));
      for (const std::uint16_t kind : priced.set) ++left_[kind];
    }
    has_[boat] = false;
  }

  // The boat whose second best falls shortest, of what is left; none where they can't all be served within the limit.
  std::optional<Next> next_boat(double shortfall) {
    constexpr double kNoOther = std::numeric_limits<double>::infinity();
    Next next;
    double all = 0.0, first_of_next = 0.0, farthest = -1.0;
    for (std::size_t boat = 0; boat < boats_.size(); ++boat) {
      if (has_[boat]) continue;
      double first = kNoOther, second = kNoOther;
      for (const PricedSet& priced : sets_[boat]) {
        if (!fits(shortfall + short_of(boat, priced.over))) break;
        if (!is_left(priced.set)) continue;
        (first == kNoOther ? first : second) = short_of(boat, priced.over);
        if (second != kNoOther) break;
      }
      all += first;
      if (!fits(shortfall + all)) return std::nullopt;
      if (second > farthest) next.boat = boat, farthest = second, first_of_next = first;
    }
    next.others = all - first_of_next;
    return next;
  }

  void close(double shortfall) {
    shortfall += std::inner_product(left_.begin(), left_.end(), pool_.prices.begin(), 0.0);
    if (!fits(shortfall)) return;
    limit_ = shortfall;
    found_ = takes_;
  }

  [[nodiscard]] double short_of(std::size_t boat, double over) const { return pool_.best[boat] - over; }
  [[nodiscard]] bool fits(double shortfall) const { return shortfall < limit_ - kSame; }
  bool is_left(const KindSet& set) { return --steps_, can_be_made_of(left_, set); }

  std::vector<PricedSets>& boats_;
  const PricedPool& pool_;
  RodCounts left_;
  long& steps_;
  double limit_ = 0.0;
  std::vector<std::vector<PricedSet>> sets_;  // by boat, best first
  std::vector<KindSet> takes_, found_;        // by boat
  std::vector<bool> has_;                     // by boat
};

struct Found {
  std::vector<KindSet> way;  // by boat
  double bound = 0.0;        // no way is worth more
};

// Whatever falls less short than the best way met with so far.
Found best_way(std::vector<PricedSets>& boats, const RodCounts& there_are, long steps) {
  constexpr double kFirstLook = 1e-4;  // of the bound
  PricedPool pool = priced_pool(boats, there_are);
  LeastShortfall search(boats, there_are, pool, steps);
  const double gap = pool.bound - pool.worth;
  double looked = 0.0;
  while (looked < gap) {
    const double limit = std::min(gap, std::max(2.0 * looked, kFirstLook * pool.bound));
    const bool better = search.find(limit);
    if (search.is_spent()) return {better ? search.way() : pool.way, pool.bound - looked};
    if (better) return {search.way(), 0.0};
    looked = limit;
  }
  return {std::move(pool.way), 0.0};
}

// Takes out what the boat's set is worth as much without, the last kind first.
void leave_what_brings_nothing(PricedSets& boat, KindSet& set) {
  for (std::size_t place = set.size(); place-- > 0;) {
    KindSet without = set;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(place));
    if (boat.worth(without) >= boat.worth(set) - kSame) set = std::move(without);
  }
}

}  // namespace

Shared shared_out(const Sharing& sharing, long steps) {
  const Kinds kinds(sharing.alike);
  std::vector<PricedSets> boats = boats_of(sharing, kinds);
  Found found = best_way(boats, kinds.counts, steps);
  Shared shared;
  std::vector<std::size_t> given(kinds.rods.size(), 0);
  for (std::size_t boat = 0; boat < boats.size(); ++boat) {
    leave_what_brings_nothing(boats[boat], found.way[boat]);
    shared.rods.push_back(kinds.named(found.way[boat], given));
    shared.worth += boats[boat].worth(found.way[boat]);
  }
  shared.at_most = std::max(shared.worth, found.bound);
  return shared;
}

}  // namespace floatwright
