#include "engine/choice/rod_prices.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace floatwright {
namespace {

constexpr int kGuesses = 300, kSteps = 200;              // by what sets are worth at most; by what they are worth
constexpr long kLooks = 1'000, kCarefulLooks = 200'000;  // at a boat's sets for one step; for the bound
constexpr int kPatience = 10, kBetweenWays = 10;        // steps
constexpr double kLess = 1e-5, kShortest = 1e-3;        // of the bound; of the first step

class Market {
 public:
  Market(std::vector<PricedSets>& boats, const RodCounts& there_are) : boats_(boats), there_are_(there_are) {
    pool_.prices.assign(there_are.size(), 0.0);
    pool_.way.resize(boats.size());
  }

  // From the prices reached so far. Of sets whose worth is not known there is a bound too, but a higher one.
  void settle(int steps, bool known) {
    pool_.bound = std::numeric_limits<double>::infinity();
    Prices prices = pool_.prices;
    double length = 1.0;
    int stale = 0;
    for (int i = 0; i < steps && length > kShortest; ++i) {
      std::vector<double> too_many = ask_at(prices, known, stale);
      if (stale > kPatience) prices = pool_.prices, length /= 2.0, stale = 0;
      if (!move(prices, too_many, length)) break;
      if (i % kBetweenWays == 0) share_at(prices, static_cast<std::size_t>(i / kBetweenWays));
    }
  }

  // Where the looks of a step did not suffice the bound was too low: at the prices reached it is found with care.
  [[nodiscard]] PricedPool pool() && {
    pool_.bound = std::inner_product(there_are_.begin(), there_are_.end(), pool_.prices.begin(), 0.0);
    for (std::size_t boat = 0; boat < boats_.size(); ++boat) {
      pool_.best.push_back(boats_[boat].known_best_at(pool_.prices, there_are_, kCarefulLooks).at_most);
      pool_.bound += pool_.best.back();
    }
    return std::move(pool_);
  }

 private:
  // By kind how many more are asked for than there are; keeps the prices where the bound is least.
  std::vector<double> ask_at(const Prices& prices, bool known, int& stale) {
    std::vector<double> too_many(prices.size());
    double bound = 0.0;
    for (std::size_t kind = 0; kind < prices.size(); ++kind) {
      too_many[kind] = -there_are_[kind];
      bound += prices[kind] * there_are_[kind];
    }
    for (PricedSets& boat : boats_) {
      const BestPriced asked = known ? boat.known_best_at(prices, there_are_, kLooks)
                                     : boat.best_at(prices, there_are_, kLooks);
      for (const std::uint16_t kind : asked.set) too_many[kind] += 1.0;
      bound += asked.over;
    }
    stale = bound < (1.0 - kLess) * pool_.bound ? 0 : stale + 1;
    if (bound < pool_.bound) pool_.bound = bound, pool_.prices = prices;
    return too_many;
  }

  bool move(Prices& prices, std::vector<double>& too_many, double length) const {
    double squares = 0.0;
    for (std::size_t kind = 0; kind < prices.size(); ++kind) {
      if (prices[kind] <= 0.0 && too_many[kind] < 0.0) too_many[kind] = 0.0;
      squares += too_many[kind] * too_many[kind];
    }
    const double gap = std::max(pool_.bound - pool_.worth, 1e-3 * pool_.bound);
    for (std::size_t kind = 0; kind < prices.size() && squares > 0.0; ++kind)
      prices[kind] = std::max(0.0, prices[kind] + length * gap / squares * too_many[kind]);
    return squares > 0.0;
  }

  // One boat after the other takes what is best for it of what is left.
  void share_at(const Prices& prices, std::size_t first) {
    RodCounts left = there_are_;
    std::vector<KindSet> way(boats_.size());
    double worth = 0.0;
    for (std::size_t i = 0; i < boats_.size(); ++i) {
      const std::size_t boat = (first + i) % boats_.size();
      way[boat] = boats_[boat].best_at(prices, left, kLooks).set;
      for (const std::uint16_t kind : way[boat]) --left[kind];
      worth += boats_[boat].worth(way[boat]);
    }
    if (worth > pool_.worth) pool_.worth = worth, pool_.way = std::move(way);
  }

  std::vector<PricedSets>& boats_;
  const RodCounts& there_are_;
  PricedPool pool_;
};

}  // namespace

PricedPool priced_pool(std::vector<PricedSets>& boats, const RodCounts& there_are) {
  Market market(boats, there_are);
  market.settle(kGuesses, false);
  market.settle(kSteps, true);
  return std::move(market).pool();
}

}  // namespace floatwright
