#include "engine/choice/advise.hpp"

#include <algorithm>

#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostAsGood = 2;

Carried carried(const ScoredRig& rig) { return {rig.rig, leader_class(rig.technique.method)}; }

// Another line; or the same line with another method, where the leader or the fly must be changed for it.
bool runs_up(const ScoredRig& rig, const ScoredRig& best) {
  if (!same_line(rig.rig, best.rig)) return true;
  return rig.technique.method != best.technique.method && carried(rig) != carried(best);
}

std::optional<ScoredRig> runner_up(const ScoredRefs& fishing, const ScoredRig& best, const RankingRules& rules) {
  ScoredRefs others;
  std::ranges::copy_if(fishing, std::back_inserter(others), [&](const ScoredRig* r) { return runs_up(*r, best); });
  const ScoredRefs by_method = advised_by_method(others, rules);
  if (by_method.empty()) return std::nullopt;
  return *by_method.front();
}

// Another rig fished by the same method from the same platform, within the tie of the best seconds there.
ScoredRefs ties_of(const ScoredRefs& fishing, const ScoredRig& best, const ChoiceJudgement& judgement) {
  ScoredRefs alike;
  for (const ScoredRig* r : fishing) {
    const bool same_way =
        r->technique.method == best.technique.method && r->technique.platform == best.technique.platform;
    if (same_way) alike.push_back(r);
  }
  const double most = (*std::ranges::max_element(alike, {}, &ScoredRig::seconds))->seconds;
  std::erase_if(alike,
                [&](const ScoredRig* r) { return r->rig == best.rig || r->seconds < (1.0 - judgement.tie) * most; });
  std::ranges::stable_sort(alike, std::ranges::greater{}, &ScoredRig::seconds);
  return alike;
}

// Each other line once, then other flies.
std::vector<ScoredRig> as_good(const ScoredRefs& fishing, const ScoredRig& best, const ChoiceJudgement& judgement) {
  const ScoredRefs ties = ties_of(fishing, best, judgement);
  std::vector<ScoredRig> result;
  const auto full = [&] { return result.size() >= kMostAsGood; };
  for (const ScoredRig* r : ties) {
    const auto named = [&](const ScoredRig& other) { return same_line(other.rig, r->rig); };
    if (!full() && !same_line(r->rig, best.rig) && std::ranges::none_of(result, named)) result.push_back(*r);
  }
  for (const ScoredRig* r : ties) {
    const auto named = [&](const ScoredRig& other) { return other.rig == r->rig; };
    if (!full() && same_line(r->rig, best.rig) && std::ranges::none_of(result, named)) result.push_back(*r);
  }
  return result;
}

}  // namespace

WaterChoice advise(const std::vector<ScoredRig>& scored, const Tackle& tackle, const ChoiceJudgement& judgement,
                   const std::vector<Rig>& rigged) {
  const RankingRules rules{tackle, judgement, rigged};
  ScoredRefs fishing;
  for (const ScoredRig& rig : scored) {
    if (fishes(rig, judgement)) fishing.push_back(&rig);
  }
  WaterChoice choice;
  const ScoredRefs by_method = advised_by_method(fishing, rules);
  const ScoredRig* best = advised_method(by_method, rules);
  if (!best) {
    choice.why_none = scored.empty() ? kNothingFishedHere : kNoLineReaches;
    return choice;
  }
  choice.best = *best;
  choice.runner_up = runner_up(fishing, *best, rules);
  choice.as_good = as_good(fishing, *best, judgement);
  for (const ScoredRig* rig : by_method) choice.by_method.push_back(*rig);
  return choice;
}

}  // namespace floatwright
