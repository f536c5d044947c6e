#include "engine/choice/rod_pool.hpp"

#include <algorithm>

#include "engine/choice/rod_choice.hpp"
#include "engine/choice/rod_set.hpp"

namespace floatwright {
namespace {

// What sets of rods are worth in one boat.
class BoatWorth {
 public:
  BoatWorth(const PoolBoat& boat, const Tackle& tackle, const Judgement& judgement)
      : choice_(rod_choice(boat.waters, tackle, boat.preferences, judgement)),
        rods_(tackle.rods.size()),
        waters_(boat.waters.size()),
        judgement_(judgement) {}

  [[nodiscard]] std::size_t most() const { return choice_.aboard; }
  [[nodiscard]] double of(const RodNumbers& rods) const {
    std::vector<const RodLoads*> set;
    for (const RodLoads& rod : choice_.rods)
      if (std::ranges::binary_search(rods, rod.rod)) set.push_back(&rod);
    return set.empty() ? 0.0 : best_day(set, waters_, judgement_.changes).worth;
  }
  // By rod and water, as if a change cost nothing: the best that the rod could carry there.
  [[nodiscard]] std::vector<std::vector<double>> best() const {
    std::vector<std::vector<double>> most(rods_, std::vector<double>(waters_, 0.0));
    for (const RodLoads& rod : choice_.rods)
      for (const Load& load : rod.loads)
        for (std::size_t water = 0; water < waters_; ++water)
          most[rod.rod][water] = std::max(most[rod.rod][water], load.gain[water]);
    return most;
  }
  // By rod: the first that is alike here; rods on which nothing fishes are.
  [[nodiscard]] std::vector<std::size_t> alike() const {
    std::vector<std::size_t> first(rods_, rods_);
    for (std::size_t i = 0; i < choice_.rods.size(); ++i) first[choice_.rods[i].rod] = choice_.rods[choice_.alike[i]].rod;
    return first;
  }

 private:
  RodChoice choice_;
  std::size_t rods_, waters_;
  const Judgement& judgement_;
};

// By rod: the first that is alike in every boat.
std::vector<std::size_t> alike_in_all(const std::vector<BoatWorth>& boats, std::size_t rods) {
  std::vector<std::vector<std::size_t>> first_in_each(rods);
  for (const BoatWorth& boat : boats) {
    const std::vector<std::size_t> first = boat.alike();
    for (std::size_t rod = 0; rod < rods; ++rod) first_in_each[rod].push_back(first[rod]);
  }
  std::vector<std::size_t> result;
  for (const auto& firsts : first_in_each)
    result.push_back(static_cast<std::size_t>(std::ranges::find(first_in_each, firsts) - first_in_each.begin()));
  return result;
}

}  // namespace

std::vector<RodNumbers> rods_of_boats(const std::vector<PoolBoat>& boats, const Tackle& tackle,
                                      const Judgement& judgement) {
  std::vector<BoatWorth> worths;
  for (const PoolBoat& boat : boats) worths.emplace_back(boat, tackle, judgement);
  Sharing sharing;
  sharing.alike = alike_in_all(worths, tackle.rods.size());
  for (const BoatWorth& worth : worths) {
    sharing.most.push_back(worth.most());
    sharing.best.push_back(worth.best());
  }
  sharing.worth = [&](std::size_t boat, const RodNumbers& rods) { return worths[boat].of(rods); };
  return shared_out(sharing).rods;
}

}  // namespace floatwright
