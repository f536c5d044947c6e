#include "engine/choice/rod_load.hpp"

#include <algorithm>
#include <numeric>

#include "engine/choice/ranking.hpp"

namespace floatwright {
namespace {

constexpr double kPerSecond = 1e-4;  // worth of an effective second: settles what W leaves equal, outweighs nothing

bool on_rod(const ScoredRig& scored, const Tackle& tackle, std::size_t rod) {
  return tackle.lines[scored.rig.line].on_rod == tackle.rods[rod].id;
}

Carried carried(const ScoredRig& scored) { return {scored.rig, leader_class(scored.technique.method)}; }

std::vector<Carried> everything(const std::vector<WaterMinutes>& waters, const Tackle& tackle, std::size_t rod,
                                const ChoiceJudgement& judgement) {
  std::vector<Carried> result;
  for (const WaterMinutes& water : waters) {
    for (const ScoredRig& scored : water.scored) {
      if (!on_rod(scored, tackle, rod) || !fishes(scored, judgement)) continue;
      if (std::ranges::find(result, carried(scored)) == result.end()) result.push_back(carried(scored));
    }
  }
  return result;
}

Load load_of(const Carried& what, const std::vector<WaterMinutes>& waters, const RankingRules& rules) {
  Load load{what, {}, {}};
  for (const WaterMinutes& water : waters) {
    ScoredRefs ways;
    for (const ScoredRig& scored : water.scored) {
      if (carried(scored) == what && fishes(scored, rules.judgement)) ways.push_back(&scored);
    }
    const ScoredRig* best = advised_method(advised_by_method(ways, rules), rules);
    load.use.push_back(best ? std::optional(static_cast<std::size_t>(best - water.scored.data())) : std::nullopt);
    load.gain.push_back(best ? in_minutes(water.time) * (best->worth + kPerSecond * best->seconds) : 0.0);
  }
  return load;
}

bool same_line_and_leader(const Load& a, const Load& b) {
  return same_line(a.carried.rig, b.carried.rig) && a.carried.leader == b.carried.leader;
}

std::vector<Load> undominated(const std::vector<Load>& loads) {
  std::vector<Load> kept;
  for (std::size_t i = 0; i < loads.size(); ++i) {
    const auto beats = [&](std::size_t j) {  // of two equals the first stays
      if (j == i || !same_line_and_leader(loads[i], loads[j])) return false;
      if (loads[i].gain == loads[j].gain) return j < i;
      return std::ranges::equal(loads[j].gain, loads[i].gain, std::ranges::greater_equal{});
    };
    bool beaten = false;
    for (std::size_t j = 0; j < loads.size() && !beaten; ++j) beaten = beats(j);
    if (!beaten) kept.push_back(loads[i]);
  }
  return kept;
}

// Gain where a load is the rod's best, then gain in all.
void best_first(std::vector<Load>& loads) {
  if (loads.empty()) return;
  std::vector<double> most(loads.front().gain.size(), 0.0);
  for (const Load& load : loads)
    std::ranges::transform(load.gain, most, most.begin(), [](double a, double b) { return std::max(a, b); });
  const auto merit = [&](const Load& load) {
    double where_best = 0.0, in_all = 0.0;
    for (std::size_t w = 0; w < most.size(); ++w) {
      in_all += load.gain[w];
      if (load.gain[w] >= most[w]) where_best += load.gain[w];
    }
    return std::pair(where_best, in_all);
  };
  std::ranges::stable_sort(loads, [&](const Load& a, const Load& b) { return merit(a) > merit(b); });
}

}  // namespace

std::vector<RodLoads> rod_loads(const std::vector<WaterMinutes>& waters, const Tackle& tackle,
                                const Judgement& judgement) {
  const std::vector<Rig> none_rigged;
  const RankingRules rules{tackle, judgement.choice, none_rigged};
  std::vector<RodLoads> result;
  for (std::size_t rod = 0; rod < tackle.rods.size(); ++rod) {
    std::vector<Load> loads;
    for (const Carried& what : everything(waters, tackle, rod, judgement.choice))
      loads.push_back(load_of(what, waters, rules));
    loads = undominated(loads);
    best_first(loads);
    if (!loads.empty()) result.push_back({rod, std::move(loads)});
  }
  return result;
}

}  // namespace floatwright
