#pragma once
// Water that comes up fast, whatever raises it: by a quarter in three hours or by half a foot in one (judgement).
#include <optional>

#include "engine/trip/caution.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

inline constexpr double kRisesFast = 0.15;  // |ln ratio| over 6 h from which a gauge is called fast; judgement

// The first such rise while the boat is there, of the middle case or, where that has none, of the high one.
[[nodiscard]] std::optional<Caution> fast_rise(const RiverDay& day, const TimedPassage& row);

}  // namespace floatwright
