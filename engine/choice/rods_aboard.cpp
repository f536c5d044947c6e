#include <algorithm>
#include <functional>
#include <numeric>
#include <set>

#include "engine/choice/rod_choice.hpp"
#include "engine/choice/rod_set.hpp"

namespace floatwright {
namespace {

using RodSet = std::vector<const RodLoads*>;

// Every set of `aboard` rods, the first to be taken of equals first; of sets that differ in rods that are alike only that.
std::vector<RodSet> sets_of(const RodChoice& from) {
  std::vector<RodSet> result;
  std::set<std::vector<std::size_t>> seen;
  std::vector<bool> taken(from.rods.size(), false);
  std::fill_n(taken.begin(), from.aboard, true);
  do {
    RodSet set;
    std::vector<std::size_t> kinds;
    for (std::size_t i = 0; i < from.rods.size(); ++i) {
      if (!taken[i]) continue;
      set.push_back(&from.rods[i]);
      kinds.push_back(from.alike[i]);
    }
    std::ranges::sort(kinds);
    if (seen.insert(std::move(kinds)).second) result.push_back(std::move(set));
  } while (std::prev_permutation(taken.begin(), taken.end()));
  return result;
}

// The set worth most, the first of equals. Sets that may be worth most are tried first, those that can't be are left
// out.
RodSet best_set(const std::vector<RodSet>& sets, std::size_t waters, const ChangesJudgement& judgement) {
  std::vector<double> at_most;
  for (const RodSet& set : sets) at_most.push_back(worth_at_most(set, waters));
  std::vector<std::size_t> order(sets.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::ranges::greater{}, [&](std::size_t i) { return at_most[i]; });
  std::size_t best = order.front();
  double worth = best_worth(sets[best], waters, judgement);
  for (const std::size_t i : order) {
    if (at_most[i] < worth) break;
    const double here = i == best ? worth : best_worth(sets[i], waters, judgement);
    if (here > worth || (here == worth && i < best)) best = i, worth = here;
  }
  return sets[best];
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
  const RodChoice from = rod_choice(waters, tackle, preferences, judgement);
  RodPlan nothing;
  nothing.use.resize(waters.size());
  if (from.aboard == 0) return nothing;

  const RodSet set = best_set(sets_of(from), waters.size(), judgement.changes);
  const RodSetDay best = best_day(set, waters.size(), judgement.changes);
  RodPlan plan = plan_of(set, best, judgement.changes);
  plan.worth = best.worth;
  return plan;
}

}  // namespace floatwright
