#include <algorithm>

#include "engine/choice/score.hpp"

namespace floatwright {
namespace {

struct Ranked {
  Way way;
  CastPath path;
  double seconds = 0.0;  // in the middle case
};

std::vector<Ranked> ranked_in_the_middle(const Scene& scene, Method method) {
  std::vector<Ranked> result;
  for (const Way& way : ways(scene, method)) {
    Measured<CastPath> path = middle_cast(scene, way);
    if (!path) continue;
    const double seconds = score_middle(scene, way, *path).seconds;
    result.push_back({way, std::move(*path), seconds});
  }
  std::ranges::stable_sort(result, std::ranges::greater{}, &Ranked::seconds);
  return result;
}

bool same_rig(const Ranked& a, const Ranked& b) { return a.way.rig == b.way.rig; }
bool same_platform(const Ranked& a, const Ranked& b) { return a.way.technique.platform == b.way.technique.platform; }

// Of a row ranked best first: the best few, the best few of each platform, and the best of each rig, which the choice of
// rods needs however poor it is.
std::vector<const Ranked*> worth_all_cases(const std::vector<Ranked>& ranked, const ChoiceJudgement& judgement) {
  constexpr std::size_t kOfEachPlatform = 3;
  std::vector<const Ranked*> kept;
  for (const Ranked& one : ranked) {
    const auto alike = [&](auto same) {
      return static_cast<std::size_t>(std::ranges::count_if(kept, [&](const Ranked* k) { return same(*k, one); }));
    };
    const bool few = static_cast<double>(kept.size()) < judgement.exactly_scored;
    if (few || alike(same_platform) < kOfEachPlatform || alike(same_rig) == 0) kept.push_back(&one);
  }
  return kept;
}

bool better(const ScoredRig& a, const ScoredRig& b) {
  if (a.worth != b.worth) return a.worth > b.worth;
  if (a.efficiency != b.efficiency) return a.efficiency > b.efficiency;
  return a.seconds > b.seconds;
}

}  // namespace

std::vector<ScoredRig> scored_rigs(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                                   const Judgement& judgement) {
  const Scene scene{water, tackle, preferences, judgement};
  std::vector<ScoredRig> result;
  for (const auto& [method, preference] : preferences.methods) {
    if (preference <= 0.0) continue;
    const std::vector<Ranked> ranked = ranked_in_the_middle(scene, method);
    for (const Ranked* one : worth_all_cases(ranked, judgement.choice)) result.push_back(score(scene, one->way, one->path));
  }
  std::ranges::stable_sort(result, better);
  return result;
}

}  // namespace floatwright
