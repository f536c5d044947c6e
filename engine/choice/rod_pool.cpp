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
        judgement_(judgement) {}

  [[nodiscard]] std::size_t most() const { return choice_.aboard; }
  double of(const RodNumbers& rods) {
    std::vector<const RodLoads*> set;  // a rod on which nothing fishes here brings nothing
    std::vector<std::size_t> kinds;
    for (std::size_t i = 0; i < choice_.rods.size(); ++i) {
      if (!std::ranges::binary_search(rods, choice_.rods[i].rod)) continue;
      set.push_back(&choice_.rods[i]);
      kinds.push_back(choice_.alike[i]);
    }
    std::ranges::sort(kinds);
    if (set.empty()) return 0.0;
    const auto [known, is_new] = known_.try_emplace(std::move(kinds), 0.0);
    if (is_new) known->second = best_day(set, waters_, judgement_.changes).worth;
    return known->second;
  }

 private:
  RodChoice choice_;
  std::size_t waters_;
  const Judgement& judgement_;
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
  return shared_out(sharing);
}

}  // namespace floatwright
