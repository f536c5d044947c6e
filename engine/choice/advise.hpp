#pragma once
// The choice from a table of scored rigs: the rig to use, the runner-up, what is as good, and each method's best.
#include <vector>

#include "engine/choice/choose.hpp"

namespace floatwright {

[[nodiscard]] WaterChoice advise(const std::vector<ScoredRig>& scored, const Tackle& tackle,
                                 const ChoiceJudgement& judgement, const std::vector<Rig>& rigged);

}  // namespace floatwright
