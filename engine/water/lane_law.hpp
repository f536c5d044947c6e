#pragma once
// The law behind a lane: its usable notes in order of flow, and what several of them fit. See lane.hpp for the
// formulas.
#include <optional>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/water/channel.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright {

struct LaneLaw {
  std::vector<WaterNote> notes;  // ascending flow, one per flow
  Channel channel;
  SurfaceLaw surface;        // knows every flow asked for and noted; else empty, and the channel's depth serves
  double rise_factor = 1.0;  // the lane's rise over the surface's, fitted to two notes or more
  double f = 0.40;           // exponent of depth under the lowest note; the channel's, fitted to three notes or more
};

// None when there is no note with a flow and a depth over 0.
[[nodiscard]] std::optional<LaneLaw> lane_law(const Water& water, const Channel& channel,
                                              const SurfaceLaw& surface = {});
[[nodiscard]] const WaterNote& nearest_note(const LaneLaw& law, Discharge q);
[[nodiscard]] Length lane_depth(const LaneLaw& law, Discharge q);
[[nodiscard]] SurfaceSpeed lane_speed(const LaneLaw& law, Discharge q);

}  // namespace floatwright
