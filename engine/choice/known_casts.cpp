#include "engine/choice/known_casts.hpp"

#include <algorithm>
#include <iterator>

#include "engine/sinking/pulled_cast.hpp"

namespace floatwright {

const KnownCasts::Known* KnownCasts::known(const Way& way) const {
  const auto found = std::ranges::find_if(known_, [&](const Known& k) { return cast_alike(scene_, k.way, way); });
  return found == known_.end() ? nullptr : &*found;
}

void KnownCasts::learn(const RigWays& ways) {
  std::vector<Technique> anew;
  std::ranges::copy_if(ways.techniques, std::back_inserter(anew), [&](const Technique& t) {
    return known({ways.rig, t}) == nullptr;
  });
  if (anew.empty()) return;
  const auto there = places(scene_, anew.front().platform);
  if (there.empty()) return;
  const auto casts = pulled_casts(scene_.tackle, ways.rig, anew, {cast_of(scene_, ways.rig), scene_.limits, there});
  for (std::size_t i = 0; i < anew.size(); ++i)
    known_.push_back({{ways.rig, anew[i]}, {casts[0][i], casts[1][i], casts[2][i]}});
}

std::vector<ScoredRig> KnownCasts::scored(const RigWays& ways) {
  learn(ways);
  PerCase<std::vector<const CastPath*>> paths;
  for (const Technique& technique : ways.techniques) {
    const Known* cast = known({ways.rig, technique});
    if (cast == nullptr || !cast->cases[1]) return {};
    const auto path = [&](std::size_t i) { return cast->cases[i] ? &*cast->cases[i] : nullptr; };
    paths.low.push_back(path(0));
    paths.middle.push_back(path(1));
    paths.high.push_back(path(2));
  }
  return score(scene_, ways, paths);
}

}  // namespace floatwright
