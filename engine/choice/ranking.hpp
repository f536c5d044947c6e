#pragma once
// The rules by which one scored rig is advised over another. The measure is flat and rigs tie: within 10 % what is
// rigged stays, else the least tackle wins. A platform tie goes to the one without an anchor.
#include <vector>

#include "engine/choice/choose.hpp"

namespace floatwright {

using ScoredRefs = std::vector<const ScoredRig*>;

struct RankingRules {
  const Tackle& tackle;
  const ChoiceJudgement& judgement;
  const std::vector<Rig>& rigged;
};

// Fishes at all: 6 seconds a minute, a tenth of its time, and a method that is worth something here.
[[nodiscard]] bool fishes(const ScoredRig& rig, const ChoiceJudgement& judgement);
[[nodiscard]] bool is_rigged(const ScoredRig& rig, const std::vector<Rig>& rigged);

// Less of it: length of sinking part (a full sinking line longest), then its sink rate, then fly and shot.
[[nodiscard]] bool is_less(const Rig& a, const Rig& b, const Tackle& tackle);

// Where the river may come up, nobody stands still in it for a little more: takes out what is fished at anchor or wading
// unless it is worth 15 % more, as a change of rig must be, than the best that is not.
void leave_standing(std::vector<ScoredRig>& scored, const ChoiceJudgement& judgement);

// Of rigs of one method on one platform, by seconds. nullptr of none; likewise below.
[[nodiscard]] const ScoredRig* advised_rig(const ScoredRefs& among, const RankingRules& rules);
// Of rigs of one method, by the worth of each platform's advised rig.
[[nodiscard]] const ScoredRig* advised_platform(const ScoredRefs& among, const RankingRules& rules);
// The advised rig of every method among them, best worth first, equal worth by efficiency.
[[nodiscard]] ScoredRefs advised_by_method(const ScoredRefs& among, const RankingRules& rules);
// Of those, the one to use: within 10 % of the best worth what is rigged stays.
[[nodiscard]] const ScoredRig* advised_method(const ScoredRefs& by_method, const RankingRules& rules);

}  // namespace floatwright
