#include <algorithm>
#include <functional>
#include <iterator>
#include <map>
#include <string>
#include <tuple>

#include "engine/choice/known_casts.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/choice/score.hpp"
#include "engine/choice/worked_out.hpp"
#include "engine/tackle/precedence.hpp"
#include "engine/tackle/twins.hpp"

namespace floatwright {
namespace {

struct Ranked {
  Way way;
  CastPath path;
  double seconds = 0.0;  // in the middle case
};

// The strips tried of every rig: uncounted and well counted, slowly. Other methods have few ways, and all are tried.
bool is_tried_first(const Technique& technique, const TechniquesJudgement& judgement) {
  if (technique.method != Method::Strip) return true;
  const double count = in_seconds(technique.count);  // s
  const bool slow = in_metres_per_second(technique.strip) == judgement.strip_m_s.front();
  return slow && (count == judgement.strip_count_s[0] || count == judgement.strip_count_s[2]);
}

bool same_rig(const Ranked& a, const Ranked& b) { return a.way.rig == b.way.rig; }
bool same_platform(const Ranked& a, const Ranked& b) { return a.way.technique.platform == b.way.technique.platform; }
bool of_same_line(const Ranked& a, const Ranked& b) { return same_line(a.way.rig, b.way.rig); }

// Leaders solved under an indicator: they depend on the fly, its shot and the rod, not on line or platform.
class KnownLeaders {
 public:
  explicit KnownLeaders(const Tackle& tackle) : tackle_(tackle) {}
  [[nodiscard]] std::optional<SetLeader> of(const Rig& rig) const {
    const auto known = leaders_.find(key(rig));
    return known == leaders_.end() ? std::nullopt : std::optional(known->second);
  }
  void add(const Rig& rig, const SetLeader& leader) { leaders_.emplace(key(rig), leader); }

 private:
  using Key = std::tuple<std::size_t, Mass, std::string>;
  [[nodiscard]] Key key(const Rig& rig) const { return {rig.fly, rig.shot, tackle_.lines[rig.line].on_rod}; }
  const Tackle& tackle_;
  std::map<Key, SetLeader> leaders_;
};

void try_ways(std::vector<Ranked>& tried, const Scene& scene, const RigWays& ways, KnownLeaders& leaders) {
  const bool hangs = ways.techniques.front().method == Method::Indicator;
  auto paths =
      middle_casts(scene, ways.rig, ways.techniques, Casts::FromTables, hangs ? leaders.of(ways.rig) : std::nullopt);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (!paths[i]) continue;
    const Way way{ways.rig, ways.techniques[i]};
    if (hangs) leaders.add(ways.rig, set_leader(*paths[i]));
    const double seconds = middle_seconds(scene, way, *paths[i]).seconds;
    tried.push_back({way, std::move(paths[i].value()), seconds});
  }
}

// Every way in the middle case, but finer counts and strips only where the first ones came near the best.
std::vector<Ranked> ranked_in_the_middle(const Scene& scene, Method method,
                                         const std::vector<std::size_t>& first_lines) {
  constexpr double kWorthRefining = 0.7;
  std::vector<RigWays> firsts = ways(scene, method);
  std::erase_if(firsts, [&](const RigWays& one) { return first_lines[one.rig.line] != one.rig.line; });
  std::vector<RigWays> finer = firsts;
  const auto is_first = [&](const Technique& t) { return is_tried_first(t, scene.judgement.techniques); };
  std::vector<Ranked> tried;
  KnownLeaders leaders(scene.tackle);
  std::vector<double> promise;  // s, by rig and platform
  double best = 0.0;            // s
  for (RigWays& one : firsts) {
    std::erase_if(one.techniques, std::not_fn(is_first));
    const std::size_t before = tried.size();
    try_ways(tried, scene, one, leaders);
    promise.push_back(0.0);
    for (std::size_t i = before; i < tried.size(); ++i) promise.back() = std::max(promise.back(), tried[i].seconds);
    best = std::max(best, promise.back());
  }
  for (std::size_t i = 0; i < finer.size(); ++i) {
    std::erase_if(finer[i].techniques, is_first);
    if (!finer[i].techniques.empty() && promise[i] >= kWorthRefining * best) try_ways(tried, scene, finer[i], leaders);
  }
  std::ranges::stable_sort(tried, std::ranges::greater{}, &Ranked::seconds);
  return tried;
}

// Of a row ranked best first: the best few, the best few of each platform, the best of each line, and the best of each
// rig that is not far behind its line's best, for the rods to choose from; with each rig the ways that are as good as
// its best, since the other cases decide between them.
std::vector<const Ranked*> worth_all_cases(const std::vector<Ranked>& ranked, const ChoiceJudgement& judgement) {
  constexpr std::size_t kOfEachPlatform = 3;
  constexpr double kNotFarBehind = 0.75, kAsGood = 0.93;
  std::vector<const Ranked*> kept;
  for (const Ranked& one : ranked) {
    const auto alike = [&](auto same) {
      return static_cast<std::size_t>(std::ranges::count_if(kept, [&](const Ranked* k) { return same(*k, one); }));
    };
    const auto of_its_line = std::ranges::find_if(kept, [&](const Ranked* k) { return of_same_line(*k, one); });
    const bool few = static_cast<double>(kept.size()) < judgement.exactly_scored;
    const bool lines_best = of_its_line == kept.end();
    const bool another_rig =
        lines_best || (alike(same_rig) == 0 && one.seconds >= kNotFarBehind * (*of_its_line)->seconds);
    const auto of_its_rig = std::ranges::find_if(kept, [&](const Ranked* k) { return same_rig(*k, one); });
    const bool another_way = of_its_rig != kept.end() && one.seconds >= kAsGood * (*of_its_rig)->seconds;
    if (few || another_rig || another_way || alike(same_platform) < kOfEachPlatform) kept.push_back(&one);
  }
  return kept;
}

// Nothing fishes where no fish can hold whatever the flow: one way of each line stands for all, in no order.
std::vector<Ranked> one_of_each_line(const Scene& scene, Method method, const std::vector<std::size_t>& first_lines) {
  std::vector<RigWays> firsts;
  for (RigWays& one : ways(scene, method)) {
    const auto of_its_line = [&](const RigWays& other) { return same_line(one.rig, other.rig); };
    if (first_lines[one.rig.line] != one.rig.line || std::ranges::any_of(firsts, of_its_line)) continue;
    one.techniques.resize(1);
    firsts.push_back(std::move(one));
  }
  std::vector<Ranked> tried;
  KnownLeaders leaders(scene.tackle);
  for (const RigWays& one : firsts) try_ways(tried, scene, one, leaders);
  return tried;
}

// Those of one rig on one platform together, in the order in which they first come.
struct KeptWays {
  RigWays ways;
  std::vector<const CastPath*> paths;
};
std::vector<KeptWays> together(const std::vector<const Ranked*>& kept) {
  std::vector<KeptWays> result;
  for (const Ranked* one : kept) {
    const Technique& technique = one->way.technique;
    auto group = std::ranges::find_if(result, [&](const KeptWays& k) {
      return k.ways.rig == one->way.rig && k.ways.techniques.front().platform == technique.platform;
    });
    if (group == result.end()) group = result.insert(group, KeptWays{RigWays{one->way.rig, {}}, {}});
    group->ways.techniques.push_back(technique);
    group->paths.push_back(&one->path);
  }
  return result;
}

// What holds for a line holds for those on the twins of its rod: each stands right behind it.
std::vector<ScoredRig> with_twins(const std::vector<ScoredRig>& scored, const Tackle& tackle,
                                  const std::vector<std::size_t>& first_lines) {
  const std::vector<std::size_t> lines = precedence(tackle).lines;
  std::vector<ScoredRig> all;
  for (const ScoredRig& one : scored) {
    for (const std::size_t line : lines) {
      if (first_lines[line] != one.rig.line) continue;
      all.push_back(one);
      all.back().rig.line = line;
    }
  }
  return all;
}

bool better(const ScoredRig& a, const ScoredRig& b) {
  if (a.worth != b.worth) return a.worth > b.worth;
  if (a.efficiency != b.efficiency) return a.efficiency > b.efficiency;
  return a.seconds > b.seconds;
}

}  // namespace

std::vector<ScoredRig> ranked_rigs(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                                   const Judgement& judgement, const FishingTables* tables) {
  const Scene scene = scene_of(water, tackle, preferences, judgement, tables);
  const std::vector<std::size_t> first_lines = lines_of_first_twins(tackle);
  std::vector<ScoredRig> result;
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0) continue;
    const std::vector<Ranked> ranked = may_be_taken(scene, method) ? ranked_in_the_middle(scene, method, first_lines)
                                                                   : one_of_each_line(scene, method, first_lines);
    const bool work_all_out = is_pulled(method) && tables == nullptr;
    KnownCasts casts(scene);
    for (const KeptWays& kept : together(worth_all_cases(ranked, judgement.choice))) {
      auto found = work_all_out ? casts.scored(kept.ways) : std::vector<ScoredRig>{};
      if (found.empty()) found = score(scene, kept.ways, kept.paths);
      std::ranges::move(found, std::back_inserter(result));
    }
  }
  std::ranges::stable_sort(result, better);
  return with_twins(result, tackle, first_lines);
}

std::vector<ScoredRig> best_worked_out(const std::vector<ScoredRig>& ranked, const WaterToFish& water,
                                       const Tackle& tackle, const Preferences& preferences,
                                       const Judgement& judgement, const FishingTables* tables) {
  if (tables == nullptr) return ranked;  // is worked out
  const Scene scene = scene_of(water, tackle, preferences, judgement, tables);
  const std::vector<std::size_t> first_lines = lines_of_first_twins(tackle);
  std::map<Method, std::vector<ScoredRig>> by_method;
  for (const ScoredRig& one : ranked)
    if (first_lines[one.rig.line] == one.rig.line) by_method[one.technique.method].push_back(one);
  std::vector<ScoredRig> result;
  for (auto& [method, of_method] : by_method) {
    if (is_pulled(method)) work_out_the_best(scene, of_method);
    std::ranges::move(of_method, std::back_inserter(result));
  }
  std::ranges::stable_sort(result, better);
  return with_twins(result, tackle, first_lines);
}

std::vector<ScoredRig> scored_rigs(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                                   const Judgement& judgement, const FishingTables* tables) {
  return best_worked_out(ranked_rigs(water, tackle, preferences, judgement, tables), water, tackle, preferences,
                         judgement, tables);
}

}  // namespace floatwright
