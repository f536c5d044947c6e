#include "engine/choice/ranking.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "engine/choice/techniques.hpp"

namespace floatwright {
namespace {

template <class Predicate>
ScoredRefs those(const ScoredRefs& among, Predicate&& predicate) {
  ScoredRefs result;
  std::ranges::copy_if(among, std::back_inserter(result), predicate);
  return result;
}

bool worthier(const ScoredRig* a, const ScoredRig* b) {
  return std::tie(a->worth, a->efficiency, a->seconds) > std::tie(b->worth, b->efficiency, b->seconds);
}

// Sinks before or after, in the order in which tackle is more.
std::tuple<double, double, double> amount(const Rig& rig, const Tackle& tackle) {
  const SinkingPart part = sinking_part(tackle, rig);
  const auto& fly = tackle.flies[rig.fly];
  return {part.whole_line ? HUGE_VAL : in_metres(part.length), in_metres_per_second(part.sink_rate),
          in_kilograms(fly.mass.value_or(Mass{}) + rig.shot)};
}

}  // namespace

bool fishes(const ScoredRig& rig, const ChoiceJudgement& judgement) {
  return rig.seconds >= judgement.least_seconds && rig.efficiency >= judgement.least_efficiency && rig.worth > 0.0;
}

bool is_rigged(const ScoredRig& rig, const std::vector<Rig>& rigged) {
  return std::ranges::find(rigged, rig.rig) != rigged.end();
}

bool is_less(const Rig& a, const Rig& b, const Tackle& tackle) { return amount(a, tackle) < amount(b, tackle); }

void leave_standing(std::vector<ScoredRig>& scored, const ChoiceJudgement& judgement) {
  double afloat = 0.0, standing = 0.0;  // the best worth of each
  for (const ScoredRig& rig : scored) {
    if (!fishes(rig, judgement)) continue;
    double& best = stands(rig.technique.platform) ? standing : afloat;
    best = std::max(best, rig.worth);
  }
  if (afloat <= 0.0 || standing >= (1.0 + judgement.worth_changing) * afloat) return;
  std::erase_if(scored, [](const ScoredRig& rig) { return stands(rig.technique.platform); });
}

const ScoredRig* advised_rig(const ScoredRefs& among, const RankingRules& rules) {
  if (among.empty()) return nullptr;
  const double best = (*std::ranges::max_element(among, {}, &ScoredRig::seconds))->seconds;
  ScoredRefs tied = those(among, [&](const ScoredRig* r) { return r->seconds >= (1.0 - rules.judgement.tie) * best; });
  const ScoredRefs kept = those(tied, [&](const ScoredRig* r) { return is_rigged(*r, rules.rigged); });
  if (!kept.empty()) return *std::ranges::max_element(kept, {}, &ScoredRig::seconds);
  return *std::ranges::min_element(tied, [&](const ScoredRig* a, const ScoredRig* b) {
    const auto amount_a = amount(a->rig, rules.tackle), amount_b = amount(b->rig, rules.tackle);
    return amount_a != amount_b ? amount_a < amount_b : a->seconds > b->seconds;
  });
}

const ScoredRig* advised_platform(const ScoredRefs& among, const RankingRules& rules) {
  ScoredRefs advised;
  for (const Platform platform : {Platform::Drifting, Platform::Held, Platform::Wading, Platform::Anchored}) {
    const auto on_it = [&](const ScoredRig* r) { return r->technique.platform == platform; };
    if (const ScoredRig* rig = advised_rig(those(among, on_it), rules)) advised.push_back(rig);
  }
  if (advised.empty()) return nullptr;
  std::ranges::stable_sort(advised, worthier);
  const ScoredRig* best = advised.front();
  if (best->technique.platform != Platform::Anchored) return best;
  const auto spares_the_anchor = [&](const ScoredRig* r) {
    return r->technique.platform != Platform::Anchored && r->worth >= (1.0 - rules.judgement.tie) * best->worth;
  };
  const auto free = std::ranges::find_if(advised, spares_the_anchor);
  return free == advised.end() ? best : *free;
}

ScoredRefs advised_by_method(const ScoredRefs& among, const RankingRules& rules) {
  ScoredRefs result;
  for (const Method method : {Method::Swing, Method::Strip, Method::Indicator, Method::TightLine, Method::Dry}) {
    const auto by_it = [&](const ScoredRig* r) { return r->technique.method == method; };
    if (const ScoredRig* rig = advised_platform(those(among, by_it), rules)) result.push_back(rig);
  }
  std::ranges::stable_sort(result, worthier);
  return result;
}

const ScoredRig* advised_method(const ScoredRefs& by_method, const RankingRules& rules) {
  if (by_method.empty()) return nullptr;
  const double least = (1.0 - rules.judgement.tie) * by_method.front()->worth;
  for (const ScoredRig* rig : by_method) {
    if (rig->worth >= least && is_rigged(*rig, rules.rigged)) return rig;
  }
  return by_method.front();
}

}  // namespace floatwright
