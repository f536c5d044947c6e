#include "engine/choice/rod_pool.hpp"

#include <algorithm>
#include <map>

#include "engine/choice/rod_choice.hpp"
#include "engine/choice/rod_set.hpp"

namespace floatwright {
namespace {

// What sets of rods are worth in one boat, each reckoned once.
class BoatWorth {
 public:
  BoatWorth(const PoolBoat& boat, const Tackle& tackle, const Judgement& judgement)
      : choice_(rod_choice(boat.waters, tackle, boat.preferences, judgement)),
        waters_(boat.waters.size()),
        judgement_(judgement) {
    for (const RodLoads& rod : choice_.rods) {
      std::vector<double>& most = most_.emplace_back(waters_, 0.0);
      for (const Load& load : rod.loads)
        for (std::size_t water = 0; water < waters_; ++water) most[water] = std::max(most[water], load.gain[water]);
    }
  }

  [[nodiscard]] std::size_t most() const { return choice_.aboard; }
  double of(const RodNumbers& rods) {
    std::vector<const RodLoads*> set;
    std::vector<std::size_t> kinds;
    for (const std::size_t i : fishing(rods)) {
      set.push_back(&choice_.rods[i]);
      kinds.push_back(choice_.alike[i]);
    }
    std::ranges::sort(kinds);
    if (set.empty()) return 0.0;
    const auto [known, is_new] = known_.try_emplace(std::move(kinds), 0.0);
    if (is_new) known->second = best_day(set, waters_, judgement_.changes).worth;
    return known->second;
  }
  // As if a change cost nothing: the best that any of the rods could carry in each water.
  [[nodiscard]] double at_most(const RodNumbers& rods) const {
    double worth = 0.0;
    for (std::size_t water = 0; water < waters_; ++water) {
      double most = 0.0;
      for (const std::size_t i : fishing(rods)) most = std::max(most, most_[i][water]);
      worth += most;
    }
    return worth;
  }

 private:
  // Places in choice_.rods; a rod on which nothing fishes here brings nothing.
  [[nodiscard]] std::vector<std::size_t> fishing(const RodNumbers& rods) const {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < choice_.rods.size(); ++i)
      if (std::ranges::binary_search(rods, choice_.rods[i].rod)) places.push_back(i);
    return places;
  }

  RodChoice choice_;
  std::size_t waters_;
  const Judgement& judgement_;
  std::vector<std::vector<double>> most_;  // by rod of the choice and water: the gain of its best load
  std::map<std::vector<std::size_t>, double> known_;
};

}  // namespace

std::vector<RodNumbers> rods_of_boats(const std::vector<PoolBoat>& boats, const Tackle& tackle,
                                      const Judgement& judgement) {
  std::vector<BoatWorth> worths;
  for (const PoolBoat& boat : boats) worths.emplace_back(boat, tackle, judgement);
  Sharing sharing;
  sharing.rods = tackle.rods.size();
  for (const BoatWorth& worth : worths) sharing.most.push_back(worth.most());
  sharing.worth = [&](std::size_t boat, const RodNumbers& rods) { return worths[boat].of(rods); };
  sharing.at_most = [&](std::size_t boat, const RodNumbers& rods) { return worths[boat].at_most(rods); };
  return shared_out(sharing);
}

}  // namespace floatwright
