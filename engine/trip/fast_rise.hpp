#pragma once
// Water that comes up fast, whatever raises it: by a quarter in three hours or by half a foot in one (judgement).
#include <optional>

#include "engine/forecast/outlook.hpp"
#include "engine/trip/caution.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

inline constexpr double kRisesFast = 0.15;  // |ln ratio| over 6 h from which a gauge is called fast; judgement

// A gauge that has come up fast by itself until the plan is made: how far it will is not known.
[[nodiscard]] bool comes_up_fast(const GaugeOutlook& outlook);

// The first such rise while the boat is there, of the middle case or, where that has none, of the high one.
[[nodiscard]] std::optional<Caution> fast_rise(const RiverDay& day, const TimedPassage& row);

}  // namespace floatwright
