#include "engine/choice/rod_pool.hpp"

#include <algorithm>

#include "engine/choice/rod_choice.hpp"
#include "engine/choice/rod_set.hpp"
#include "engine/tackle/precedence.hpp"

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
    return set.empty() ? 0.0 : best_worth(set, waters_, judgement_.changes);
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

using Places = std::vector<std::size_t>;  // rods, the first to be taken of equals first

// By place: the first that is alike in every boat.
Places alike_in_all(const std::vector<BoatWorth>& boats, const Places& order) {
  std::vector<std::vector<std::size_t>> first_in_each(order.size());
  for (const BoatWorth& boat : boats) {
    const std::vector<std::size_t> first = boat.alike();
    for (std::size_t place = 0; place < order.size(); ++place) first_in_each[place].push_back(first[order[place]]);
  }
  Places result;
  for (const auto& firsts : first_in_each)
    result.push_back(static_cast<std::size_t>(std::ranges::find(first_in_each, firsts) - first_in_each.begin()));
  return result;
}

RodNumbers rods_at(const RodNumbers& places, const Places& order) {
  RodNumbers rods;
  for (const std::size_t place : places) rods.push_back(order[place]);
  std::ranges::sort(rods);
  return rods;
}

}  // namespace

std::vector<RodNumbers> rods_of_boats(const std::vector<PoolBoat>& boats, const Tackle& tackle,
                                      const Judgement& judgement) {
  const Places order = precedence(tackle).rods;
  std::vector<BoatWorth> worths;
  for (const PoolBoat& boat : boats) worths.emplace_back(boat, tackle, judgement);
  Sharing sharing;
  sharing.alike = alike_in_all(worths, order);
  for (const BoatWorth& worth : worths) {
    sharing.most.push_back(worth.most());
    const auto best = worth.best();
    auto& by_place = sharing.best.emplace_back();
    for (const std::size_t rod : order) by_place.push_back(best[rod]);
  }
  sharing.worth = [&](std::size_t boat, const RodNumbers& places) { return worths[boat].of(rods_at(places, order)); };
  std::vector<RodNumbers> given;
  for (const RodNumbers& places : shared_out(sharing).rods) given.push_back(rods_at(places, order));
  return given;
}

}  // namespace floatwright
