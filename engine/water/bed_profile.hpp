#pragma once
// Speed over depth by what the bed is made of: the power law whose mean is that of the log law over such a bed,
//   p = 1/(ln(30 h/ks) - 1), so that mean/surface = 1 - 1/ln(30 h/ks);  ks = 3.5 D84, at most the depth.
// A log law holds no nearer to the bed than the stones stand up, and a fly fishes there: over coarse beds the speed falls
// less than logarithmically and is not 0 at the bed (on steep streams with planar coarse-grained beds, quoted in a
// summary), and S-shaped where the roughness is 0.6 of the depth (on gravel-bed rivers, Archives of Hydro-Engineering
// 2009, abstract). The exponent as a measure of the bed's resistance: Lee and others 2013, doi 10.4236/eng.2013.512114,
// abstract. 3.5 D84: given as the usual multiplier in Clifford and others 1992, doi 10.1002/esp.3290170202, abstract.
// D84 by the bed's name is judgement within Wentworth's classes: gravel 50 mm, cobble 150 mm, boulders 350 mm; sand's
// ripples count as ks = 50 mm. A bed that is not noted, or wood: the usual power law of 1/6.
#include "engine/river/river.hpp"
#include "engine/water/profile.hpp"

namespace floatwright {

// Of water that has a depth; without one the usual power law.
[[nodiscard]] Profile bed_profile(Bed bed, Length depth);

}  // namespace floatwright
