#include "engine/choice/choose.hpp"

#include "engine/choice/advise.hpp"

namespace floatwright {

WaterChoice choose(const WaterToFish& water, const Tackle& tackle, const Preferences& preferences,
                   const Judgement& judgement, const std::vector<Rig>& rigged, const FishingTables* tables) {
  return advise(scored_rigs(water, tackle, preferences, judgement, tables), tackle, judgement.choice, rigged);
}

}  // namespace floatwright
