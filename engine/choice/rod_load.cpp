#include "engine/choice/rod_load.hpp"

#include <algorithm>
#include <map>

#include "engine/choice/ranking.hpp"
#include "engine/tackle/precedence.hpp"

namespace floatwright {
namespace {

// Settle what worth leaves equal, and outweigh nothing.
constexpr double kMadeForIt = 1e-3, kPerSinkingMetre = -1e-5, kPerSecond = 1e-6;

// Common practice, no source.
bool is_made_for(LineKind kind, Method method) {
  switch (method) {
    case Method::Dry:
      return kind == LineKind::DoubleTaper || kind == LineKind::Floating;
    case Method::Indicator:
      return kind == LineKind::NymphTaper;
    case Method::TightLine:
      return is_thin(kind);
    case Method::Swing:
    case Method::Strip:
      return true;
  }
  return false;
}

double trace(const ScoredRig& scored, const Tackle& tackle) {
  const LineKind kind = tackle.lines[scored.rig.line].kind;
  return (is_made_for(kind, scored.technique.method) ? kMadeForIt : 0.0) +
         kPerSinkingMetre * in_metres(sinking_part(tackle, scored.rig).length) + kPerSecond * scored.seconds;
}

bool on_rod(const ScoredRig& scored, const Tackle& tackle, std::size_t rod) {
  return tackle.lines[scored.rig.line].on_rod == tackle.rods[rod].id;
}

Carried carried(const ScoredRig& scored) { return {scored.rig, leader_class(scored.technique.method)}; }

// Of loads that bring as much the first is taken: a main spool before a spare one, then plainer tackle.
std::vector<Carried> everything(const std::vector<WaterMinutes>& waters, const Tackle& tackle, std::size_t rod,
                                const ChoiceJudgement& judgement) {
  std::vector<Carried> result;
  for (const WaterMinutes& water : waters) {
    for (const ScoredRig& scored : water.scored) {
      if (!on_rod(scored, tackle, rod) || !fishes(scored, judgement)) continue;
      if (std::ranges::find(result, carried(scored)) == result.end()) result.push_back(carried(scored));
    }
  }
  std::ranges::stable_sort(result, [&](const Carried& a, const Carried& b) {
    const bool a_spare = tackle.lines[a.rig.line].spare_spool, b_spare = tackle.lines[b.rig.line].spare_spool;
    return a_spare != b_spare ? b_spare : is_less(a.rig, b.rig, tackle);
  });
  return result;
}

// The way a load is fished in each water.
Load load_of(const Carried& what, const std::vector<WaterMinutes>& waters, const RankingRules& rules) {
  Load load{what, {}, {}};
  for (const WaterMinutes& water : waters) {
    ScoredRefs ways;
    for (const ScoredRig& scored : water.scored) {
      if (carried(scored) == what && fishes(scored, rules.judgement)) ways.push_back(&scored);
    }
    const ScoredRig* best = advised_method(advised_by_method(ways, rules), rules);
    load.use.push_back(best ? std::optional(static_cast<std::size_t>(best - water.scored.data())) : std::nullopt);
  }
  return load;
}

using MostSeconds = std::map<Method, double>;  // Z

// The most seconds that any load has by each method in a water.
MostSeconds most_seconds(const std::vector<RodLoads>& rods, const WaterMinutes& water, std::size_t index) {
  MostSeconds most;
  for (const RodLoads& rod : rods) {
    for (const Load& load : rod.loads) {
      if (!load.use[index]) continue;
      const ScoredRig& used = water.scored[*load.use[index]];
      most[used.technique.method] = std::max(most[used.technique.method], used.seconds);
    }
  }
  return most;
}

double gain(const ScoredRig& used, const WaterMinutes& water, double most, const RankingRules& rules) {
  const double as_good = (1.0 - rules.judgement.tie) * most;  // s
  const double share = used.seconds < as_good ? used.seconds / as_good : 1.0;
  return in_minutes(water.time) * (used.worth * share + trace(used, rules.tackle));
}

void add_gains(std::vector<RodLoads>& rods, const std::vector<WaterMinutes>& waters, const RankingRules& rules) {
  for (std::size_t w = 0; w < waters.size(); ++w) {
    const MostSeconds most = most_seconds(rods, waters[w], w);
    for (RodLoads& rod : rods) {
      for (Load& load : rod.loads) {
        const ScoredRig* used = load.use[w] ? &waters[w].scored[*load.use[w]] : nullptr;
        load.gain.push_back(used ? gain(*used, waters[w], most.at(used->technique.method), rules) : 0.0);
      }
    }
  }
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
  for (const std::size_t rod : precedence(tackle).rods) {
    std::vector<Load> loads;
    for (const Carried& what : everything(waters, tackle, rod, judgement.choice))
      loads.push_back(load_of(what, waters, rules));
    if (!loads.empty()) result.push_back({rod, std::move(loads)});
  }
  add_gains(result, waters, rules);
  for (RodLoads& rod : result) {
    rod.loads = undominated(rod.loads);
    best_first(rod.loads);
  }
  return result;
}

}  // namespace floatwright
