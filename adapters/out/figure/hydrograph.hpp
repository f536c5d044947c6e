#pragma once
// The flow at the put-in: a line up to the newest readings, dashes as expected, the band between low and high hatched;
// the hours afloat and a dam's changes as bars over it. Local hours, the reader's units.
#include "adapters/out/figure/drawing.hpp"
#include "adapters/out/figure/flow_history.hpp"
#include "engine/wording/clock.hpp"

namespace floatwright {

[[nodiscard]] Drawing hydrograph(const FlowCourse& history, UnitSystem units, const LocalClock& clock, double width);

}  // namespace floatwright
