#pragma once
// Classes of fly by the trade's words, for one who asks without a tackle file. What they weigh and how fast they sink
// is judgement, no source: weigh ten of your own and time one in a glass, and write those down instead.
#include <vector>

#include "engine/tackle/tackle.hpp"

namespace floatwright {

[[nodiscard]] const std::vector<FlyClass>& usual_flies();

}  // namespace floatwright
