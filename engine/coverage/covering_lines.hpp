#pragma once
// Which lines cover one water on one day: the rule of engine/coverage/coverage.hpp.
#include "engine/choice/suits.hpp"
#include "engine/coverage/covering_sets.hpp"
#include "engine/coverage/line_seconds.hpp"

namespace floatwright {

inline constexpr double kCovers = 0.80;  // of the most seconds by the same method; judgement

// 0: no line fishes there. Without a hatch nothing is fished dry.
[[nodiscard]] LineMask covering_lines(const SecondsByMethod& seconds, const Conditions& conditions,
                                      const Preferences& preferences, const Judgement& judgement);

}  // namespace floatwright
