#pragma once
// Depth and surface speed of one water at any flow, from one note upwards (the lane: what the guide sees and fishes,
// not the channel's mean). The surface rises alike across the channel and each lane keeps its share of unit discharge:
//   d(Q) = d0 + rise above the noted flow; the larger of that and d0 (Q/Q0)^f below it;  q(Q) = d0 v0 V(Q)D(Q)/(V0 D0).
// With several notes: between two noted flows both speak, d linear in the channel's depth from one to the other, so
// that every note is met and nothing jumps; beyond them the nearest, its rise times a factor fitted to all of them;
// three or more also fit f. Of notes at one flow (within 5 %) the one seen last stands. Below 0.4 or above 2.5 times
// the nearest noted flow the local scatter doubles and `far_from_note` is set.
#include <string>

#include "engine/river/river.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/per_case.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {

struct Lane {
  PerCase<Length> depth;
  PerCase<SurfaceSpeed> surface_speed;
  double sd_ln_depth = 0.15, sd_ln_speed = 0.15;  // local scatter, independent of flow
  DepthSource source = DepthSource::Noted;
  bool far_from_note = false;
  Discharge noted_at;  // the flow of the note used
};

// Absent where nobody described the water, or the flow is unknown or none. `noted_at`, source and scatter are those of
// the note nearest to the middle case (nearest in the ratio of flows).
[[nodiscard]] Measured<Lane> lane(const Water& water, const Channel& channel, const PerCase<Discharge>& flow);

}  // namespace floatwright
