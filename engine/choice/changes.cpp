#include "engine/choice/changes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/choice/score.hpp"

namespace floatwright {
namespace {

constexpr double kTableError = 0.05;  // of seconds or worth, nearly always

// What another line had over the one in use at the flow expected, where that is enough to take over: the boat's rods were
// chosen without it. Flow makes it the better line only where it has more over it than this.
struct Foregone {
  Rig rig;
  Method method;
  double ratio = 1.0;
};

struct Search {
  const std::vector<Way>& candidates;
  const ScoredRig& in_use;
  const WaterAtFlow& water_at;
  Discharge now;
  const Tackle& tackle;
  const Preferences& preferences;
  const Judgement& judgement;
  const FishingTables* tables;
  std::vector<Foregone> foregone{};
};

enum class Finding { Holds, Changes, Unknown };
struct AtFlow {
  Finding finding = Finding::Unknown;
  std::optional<ScoredRig> to;
};

// The best few ways of each line and method; more of the line in use, which may be fished another way in other water.
std::vector<Way> candidate_ways(const std::vector<ScoredRig>& scored, const ScoredRig& in_use) {
  constexpr std::ptrdiff_t kOfTheLineInUse = 4, kOfOthers = 2;
  ScoredRefs by_seconds;
  for (const ScoredRig& rig : scored) by_seconds.push_back(&rig);
  std::ranges::stable_sort(by_seconds, std::ranges::greater{}, &ScoredRig::seconds);
  std::vector<Way> result{{in_use.rig, in_use.technique}};
  for (const ScoredRig* rig : by_seconds) {
    const auto alike = [&](const Way& way) {
      return same_line(way.rig, rig->rig) && way.technique.method == rig->technique.method;
    };
    const bool uses = same_line(rig->rig, in_use.rig) && rig->technique.method == in_use.technique.method;
    if (std::ranges::count_if(result, alike) < (uses ? kOfTheLineInUse : kOfOthers))
      result.push_back({rig->rig, rig->technique});
  }
  return result;
}

bool is_far(const WaterToFish& water, Discharge flow, const FlowJudgement& judgement) {
  if (water.lane.noted_at <= Discharge{}) return water.lane.far_from_note;
  return flow < judgement.least_of_noted * water.lane.noted_at || flow > judgement.most_of_noted * water.lane.noted_at;
}

bool uses_the_line(const Search& search, const Rig& rig, Method method) {
  return same_line(rig, search.in_use.rig) && method == search.in_use.technique.method;
}

std::optional<ScoredRig> scored_there(const Scene& scene, const Way& way, Casts casts) {
  const auto path = middle_casts(scene, way.rig, {&way.technique, 1}, casts);
  if (!path.front()) return std::nullopt;
  return score_middle(scene, way, *path.front());
}

// Of at least one.
const ScoredRig* most_seconds(const std::vector<ScoredRig>& among) {
  return &*std::ranges::max_element(among, {}, &ScoredRig::seconds);
}

// The line in use, fished by its method in each way it has there.
std::vector<ScoredRig> ways_in_use(const Search& search, const Scene& scene) {
  std::vector<ScoredRig> ways;
  for (const Way& way : search.candidates) {
    if (!uses_the_line(search, way.rig, way.technique.method)) continue;
    if (auto rig = scored_there(scene, way, Casts::FromTables)) ways.push_back(*std::move(rig));
  }
  return ways;
}

// The best of at least one; where they come from tables, those that are best by them, or nearly, are worked out.
ScoredRig best_worked_out(const Scene& scene, std::vector<ScoredRig> ways) {
  if (!scene.tables) return *most_seconds(ways);
  const double nearly = (1.0 - kTableError) * most_seconds(ways)->seconds;
  std::erase_if(ways, [&](const ScoredRig& way) { return way.seconds < nearly; });
  for (ScoredRig& way : ways) way = scored_there(scene, {way.rig, way.technique}, Casts::WorkedOut).value_or(way);
  return *most_seconds(ways);
}

// By seconds within a method, else by worth.
double over(const ScoredRig& rig, const ScoredRig& in_use) {
  const bool one_method = rig.technique.method == in_use.technique.method;
  const double had = one_method ? in_use.seconds : in_use.worth, has = one_method ? rig.seconds : rig.worth;
  return had > 0.0 ? has / had : has > 0.0 ? std::numeric_limits<double>::infinity() : 0.0;
}

double foregone(const Search& search, const Rig& rig, Method method) {
  double most = 1.0;
  for (const Foregone& f : search.foregone)
    if (same_line(f.rig, rig) && f.method == method) most = std::max(most, f.ratio);
  return most;
}

// `leeway`: what may be missing to it.
bool takes_over(const Search& search, const ScoredRig& rig, const ScoredRig& in_use, double leeway) {
  const ChoiceJudgement& judgement = search.judgement.choice;
  if (same_line(rig.rig, in_use.rig) || !fishes(rig, judgement)) return false;
  const double more = (1.0 + judgement.worth_changing) * (1.0 - leeway) * foregone(search, rig.rig, rig.technique.method);
  return over(rig, in_use) >= more;
}

// What takes over, read from tables where there are some. A method that could not be worth enough however well it
// fished is not computed.
std::vector<ScoredRig> challengers(const Search& search, const Scene& scene, const ScoredRig& in_use, double leeway) {
  std::vector<ScoredRig> result;
  for (const Way& way : search.candidates) {
    const Method method = way.technique.method;
    if (same_line(way.rig, in_use.rig)) continue;
    const double enough = (1.0 + search.judgement.choice.worth_changing) * (1.0 - leeway) * in_use.worth;
    if (method != in_use.technique.method && most_worth(scene, method) < enough) continue;
    auto rig = scored_there(scene, way, Casts::FromTables);
    if (rig && takes_over(search, *rig, in_use, leeway)) result.push_back(*std::move(rig));
  }
  return result;
}

// By the tables alone: it fishes and nothing takes over, however their errors lie. Most flows are settled so.
bool surely_holds(const Search& search, const Scene& scene, ScoredRig in_use) {
  if (!scene.tables || !challengers(search, scene, in_use, 2.0 * kTableError).empty()) return false;
  in_use.seconds *= 1.0 - kTableError;
  in_use.efficiency *= 1.0 - kTableError;
  return fishes(in_use, search.judgement.choice);
}

std::vector<ScoredRig> takeovers(const Search& search, const Scene& scene, const ScoredRig& in_use) {
  if (!scene.tables) return challengers(search, scene, in_use, 0.0);
  std::vector<ScoredRig> result;
  for (const ScoredRig& near : challengers(search, scene, in_use, kTableError)) {
    const auto rig = scored_there(scene, {near.rig, near.technique}, Casts::WorkedOut);
    if (rig && takes_over(search, *rig, in_use, 0.0)) result.push_back(*rig);
  }
  return result;
}

std::vector<Foregone> foregone_now(const Search& search) {
  const std::optional<WaterToFish> water = search.water_at(search.now);
  if (!water) return {};
  const Scene scene = scene_of(*water, search.tackle, search.preferences, search.judgement, search.tables);
  std::vector<ScoredRig> ways = ways_in_use(search, scene);
  if (ways.empty() || surely_holds(search, scene, *most_seconds(ways))) return {};
  const ScoredRig in_use = best_worked_out(scene, std::move(ways));
  std::vector<Foregone> result;
  for (const ScoredRig& rig : takeovers(search, scene, in_use))
    result.push_back({rig.rig, rig.technique.method, over(rig, in_use)});
  return result;
}

AtFlow at_flow(const Search& search, Discharge flow) {
  const std::optional<WaterToFish> water = search.water_at(flow);
  if (!water || is_far(*water, flow, search.judgement.flow)) return {};
  const Scene scene = scene_of(*water, search.tackle, search.preferences, search.judgement, search.tables);
  std::vector<ScoredRig> ways = ways_in_use(search, scene);
  if (ways.empty()) return {};
  if (surely_holds(search, scene, *most_seconds(ways))) return {Finding::Holds, std::nullopt};
  const ScoredRig in_use = best_worked_out(scene, std::move(ways));
  const std::vector<ScoredRig> better = takeovers(search, scene, in_use);
  ScoredRefs refs;
  for (const ScoredRig& rig : better) refs.push_back(&rig);
  const std::vector<Rig> none_rigged;
  const RankingRules rules{search.tackle, search.judgement.choice, none_rigged};
  const ScoredRefs by_method = advised_by_method(refs, rules);
  if (!by_method.empty()) return {Finding::Changes, *by_method.front()};
  return {fishes(in_use, search.judgement.choice) ? Finding::Holds : Finding::Unknown, std::nullopt};
}

// Between a factor at which the line holds and one at which it changes, halved twice in logs.
LineChange narrowed(const Search& search, double holds, double changes, AtFlow found) {
  for (int halving = 0; halving < 2; ++halving) {
    const double middle = std::sqrt(holds * changes);
    AtFlow there = at_flow(search, middle * search.now);
    if (there.finding == Finding::Changes) {
      changes = middle;
      found = std::move(there);
    } else {
      holds = middle;
    }
  }
  return {changes * search.now, *found.to};
}

struct Side {
  std::optional<LineChange> change;
  Discharge looked_to;  // the last flow at which the line holds
};

Side look(const Search& search, double direction) {
  Side side{std::nullopt, search.now};
  double last = 1.0;  // factor
  for (double step = 1.0; step <= search.judgement.flow.steps; ++step) {
    const double factor = std::exp2(direction * step / search.judgement.flow.steps_per_doubling);
    AtFlow there = at_flow(search, factor * search.now);
    if (there.finding == Finding::Unknown) return side;
    if (there.finding == Finding::Changes) {
      side.change = narrowed(search, last, factor, std::move(there));
      side.looked_to = side.change->at;
      return side;
    }
    last = factor;
    side.looked_to = factor * search.now;
  }
  return side;
}

}  // namespace

void changes_at(WaterChoice& choice, const std::vector<ScoredRig>& scored, const WaterAtFlow& water_at, Discharge now,
                const Tackle& tackle, const Preferences& preferences, const Judgement& judgement,
                const FishingTables* tables) {
  if (!choice.best || now <= Discharge{}) return;
  const std::vector<Way> candidates = candidate_ways(scored, *choice.best);
  Search search{candidates, *choice.best, water_at, now, tackle, preferences, judgement, tables};
  search.foregone = foregone_now(search);
  Side below = look(search, -1.0), above = look(search, 1.0);
  choice.holds = {below.looked_to, above.looked_to};
  choice.changes_below = std::move(below.change);
  choice.changes_above = std::move(above.change);
}

}  // namespace floatwright
