#include "engine/wording/rods_of_the_day.hpp"

#include <algorithm>
#include <numeric>
#include <set>

#include "engine/wording/say_rig.hpp"

namespace floatwright {
namespace {

struct FishedWater {
  const PlannedReach* reach;
  const ScoredRig* best;
};

std::vector<FishedWater> fished_waters(const PlannedStretch& stretch) {
  std::vector<FishedWater> fished;
  for (const PlannedReach& reach : stretch.reaches) {
    if (!reach.closed_why.empty()) continue;
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best) fished.push_back({&reach, &*water.choice.best});
  }
  return fished;
}

std::string letter(std::size_t place) { return place < 26 ? std::string(1, static_cast<char>('A' + place)) : "?"; }

void put_in_boat(RodsOfTheDay& rods, std::size_t rod, std::optional<Rig> at_launch) {
  rods.rods.push_back({rod, letter(rods.rods.size()), std::move(at_launch), std::nullopt, nullptr});
}

bool have_marks_of_their_own(const RodsOfTheDay& rods, const Tackle& tackle) {
  std::set<std::string> seen;
  return std::all_of(rods.rods.begin(), rods.rods.end(), [&](const RodInBoat& r) {
    const std::string& mark = tackle.rods.at(r.rod).mark;
    return !mark.empty() && seen.insert(mark).second;
  });
}

// By rod in the boat: the place of the first water it fishes; behind all of them for one that only comes along.
std::size_t first_use(std::size_t rod, const std::vector<FishedWater>& fished, const Tackle& tackle) {
  const auto on_it = [&](const FishedWater& water) { return rod_of(tackle, water.best->rig) == rod; };
  return static_cast<std::size_t>(std::ranges::find_if(fished, on_it) - fished.begin());
}

RodsOfTheDay as_packed(const PlannedStretch& stretch, const Tackle& tackle) {
  std::vector<std::size_t> order(stretch.rods.rods.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const std::vector<FishedWater> fished = fished_waters(stretch);
  std::ranges::stable_sort(order, {}, [&](std::size_t i) { return first_use(stretch.rods.rods[i], fished, tackle); });
  RodsOfTheDay rods;
  for (const std::size_t i : order) {
    const bool known = i < stretch.rigged.size();
    put_in_boat(rods, stretch.rods.rods[i], known ? std::optional<Rig>(stretch.rigged[i]) : std::nullopt);
  }
  for (const FishedWater& water : fished) {
    const std::size_t rod = rod_of(tackle, water.best->rig);
    if (rod < tackle.rods.size() && !in_boat(rods, tackle, water.best->rig)) put_in_boat(rods, rod, water.best->rig);
  }
  return rods;
}

}  // namespace

std::optional<std::size_t> in_boat(const RodsOfTheDay& rods, const Tackle& tackle, const Rig& rig) {
  const std::size_t rod = rod_of(tackle, rig);
  const auto found = std::find_if(rods.rods.begin(), rods.rods.end(), [&](const RodInBoat& r) { return r.rod == rod; });
  if (found == rods.rods.end()) return std::nullopt;
  return static_cast<std::size_t>(found - rods.rods.begin());
}

RodsOfTheDay rods_of_the_day(const PlannedStretch& stretch, const Tackle& tackle) {
  RodsOfTheDay rods = as_packed(stretch, tackle);
  rods.marks_tell = have_marks_of_their_own(rods, tackle);
  std::vector<std::optional<Rig>> carried;
  for (const RodInBoat& rod : rods.rods) carried.push_back(rod.at_launch);

  for (const FishedWater& water : fished_waters(stretch)) {
    const auto at = in_boat(rods, tackle, water.best->rig);
    if (!at) continue;
    RodInBoat& rod = rods.rods[*at];
    if (!rod.at_launch) rod.at_launch = carried[*at] = water.best->rig;
    if (*rod.at_launch == water.best->rig && !rod.as_fished) {
      rod.as_fished = *water.best;
      rod.first_reach = water.reach;
    }
    if (*carried[*at] == water.best->rig) continue;
    rods.changes.push_back({*at, water.reach->arrive, water.reach, *carried[*at], *water.best});
    carried[*at] = water.best->rig;
  }
  return rods;
}

}  // namespace floatwright
