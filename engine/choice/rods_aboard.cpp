#include <algorithm>

#include "engine/choice/rod_set.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostStates = 1728;

using RodSet = std::vector<const RodLoads*>;

std::size_t states_of(const std::vector<RodLoads>& rods, std::size_t aboard) {
  std::vector<std::size_t> sizes;
  for (const RodLoads& rod : rods) sizes.push_back(rod.loads.size());
  std::ranges::sort(sizes, std::ranges::greater{});
  std::size_t count = 1;
  for (std::size_t i = 0; i < aboard; ++i) count *= sizes[i];
  return count;
}

// Drops the least of the fullest rod's loads until every set is small enough.
void thin(std::vector<RodLoads>& rods, std::size_t aboard) {
  const auto fullness = [](const RodLoads& rod) { return rod.loads.size(); };
  while (states_of(rods, aboard) > kMostStates) {
    const auto fullest = std::ranges::max_element(rods, {}, fullness);
    if (fullest->loads.size() < 2) return;
    fullest->loads.pop_back();
  }
}

// Every set of `aboard` rods, in the order of the tackle file.
std::vector<RodSet> sets_of(const std::vector<RodLoads>& rods, std::size_t aboard) {
  std::vector<RodSet> result;
  std::vector<bool> taken(rods.size(), false);
  std::fill_n(taken.begin(), aboard, true);
  do {
    RodSet& set = result.emplace_back();
    for (std::size_t i = 0; i < rods.size(); ++i) {
      if (taken[i]) set.push_back(&rods[i]);
    }
  } while (std::prev_permutation(taken.begin(), taken.end()));
  return result;
}

// What is used in a water: the best of the rods aboard, the first of equals.
std::optional<std::size_t> used(const RodSet& set, const std::vector<std::size_t>& loads, std::size_t water) {
  const Load* best = nullptr;
  for (std::size_t rod = 0; rod < set.size(); ++rod) {
    const Load& load = set[rod]->loads[loads[rod]];
    if (load.use[water] && (!best || load.gain[water] > best->gain[water])) best = &load;
  }
  return best ? best->use[water] : std::nullopt;
}

void add_changes(RodPlan& plan, const RodSet& set, const Carriage& carriage, const ChangesJudgement& judgement) {
  for (std::size_t water = 1; water < carriage.size(); ++water) {
    for (std::size_t rod = 0; rod < set.size(); ++rod) {
      const Carried& from = set[rod]->loads[carriage[water - 1][rod]].carried;
      const Carried& to = set[rod]->loads[carriage[water][rod]].carried;
      if (from == to) continue;
      ++plan.changes;
      plan.lost = plan.lost + change_time(from, to, judgement);
      const bool at_launch = set[rod]->loads[carriage[0][rod]].carried.rig.line == to.rig.line;
      if (!at_launch && std::ranges::find(plan.spares, to.rig.line) == plan.spares.end())
        plan.spares.push_back(to.rig.line);
    }
  }
}

RodPlan plan_of(const RodSet& set, const RodSetDay& day, const ChangesJudgement& judgement) {
  RodPlan plan;
  for (std::size_t rod = 0; rod < set.size(); ++rod) {
    plan.rods.push_back(set[rod]->rod);
    plan.at_launch.emplace_back(set[rod]->loads[day.carriage.front()[rod]].carried.rig);
  }
  for (std::size_t water = 0; water < day.carriage.size(); ++water)
    plan.use.push_back(used(set, day.carriage[water], water));
  add_changes(plan, set, day.carriage, judgement);
  return plan;
}

}  // namespace

RodPlan rods_aboard(const std::vector<WaterMinutes>& waters, const Tackle& tackle, const Preferences& preferences,
                    const Judgement& judgement) {
  std::vector<RodLoads> rods = rod_loads(waters, tackle, judgement);
  const auto wanted = static_cast<std::size_t>(std::max(0, preferences.rods_aboard));
  const std::size_t aboard = std::min(wanted, rods.size());
  RodPlan nothing;
  nothing.use.resize(waters.size());
  if (aboard == 0) return nothing;

  thin(rods, aboard);
  const std::vector<RodSet> sets = sets_of(rods, aboard);
  const RodSet* best_set = nullptr;
  RodSetDay best;
  for (const RodSet& set : sets) {
    RodSetDay day = best_day(set, waters.size(), judgement.changes);
    if (best_set && day.worth <= best.worth) continue;
    best_set = &set;
    best = std::move(day);
  }
  return plan_of(*best_set, best, judgement.changes);
}

}  // namespace floatwright
