#pragma once
// What was ranked on tables, worked out where it matters. The measure is flat and rigs tie, so that a table alone would
// name another rig in one water of eight.
#include <vector>

#include "engine/choice/score.hpp"

namespace floatwright {

// Of scores of one method: the best dozen (judgement), and then whatever would be advised on some platform, until it is one of those.
void work_out_the_best(const Scene& scene, std::vector<ScoredRig>& of_method);

}  // namespace floatwright
