#pragma once
// Depth and surface speed of one water at any flow, from one note upwards (the lane: what the guide sees and fishes,
// not the channel's mean). The surface rises alike across the channel and each lane keeps its share of unit discharge:
//   d(Q) = d0 + rise above the noted flow; the larger of that and d0 (Q/Q0)^f below it;  q(Q) = d0 v0 V(Q)D(Q)/(V0 D0).
// The rise is that of the surface (surface_rise.hpp), else the channel's depth at Q less that at the noted flow.
// With several notes: between two noted flows both speak, d linear in the surface's height from one to the other, so
// that every note is met and nothing jumps; beyond them the nearest, its rise times a factor fitted to all of them;
// three or more also fit f. Of notes at one flow (within 5 %) the one seen last stands. Below 0.4 or above 2.5 times
// the nearest noted flow the local scatter doubles and `far_from_note` is set. Beyond what was measured of the channel
// or rated at the gauge `beyond` says what that is.
#include <optional>

#include "engine/river/river.hpp"
#include "engine/units/measured.hpp"
#include "engine/units/per_case.hpp"
#include "engine/water/channel.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright {

// What was measured of the channel, or rated at the gauge that speaks for it.
struct KnownFlows {
  enum class Of { Channel, Rating } of = Of::Channel;
  Discharge from, to;
  friend bool operator==(const KnownFlows&, const KnownFlows&) = default;
};

struct Lane {
  PerCase<Length> depth;
  PerCase<SurfaceSpeed> surface_speed;
  double sd_ln_depth = 0.15, sd_ln_speed = 0.15;  // local scatter, independent of flow
  DepthSource source = DepthSource::Noted;
  bool far_from_note = false;
  Discharge noted_at;  // the flow of the note used
  std::optional<KnownFlows> beyond;  // what is known, where some case is beyond it
};

// Absent where nobody described the water, where the flow is unknown or none, or over the banks of a surveyed section.
// `noted_at`, source and scatter are those of
// the note nearest to the middle case (nearest in the ratio of flows).
[[nodiscard]] Measured<Lane> lane(const Water& water, const Channel& channel, const PerCase<Discharge>& flow,
                                  const SurfaceLaw& surface = {});

}  // namespace floatwright
