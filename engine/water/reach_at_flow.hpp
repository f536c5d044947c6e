#pragma once
// A reach at its own flow: the part of the river's that runs down it, by which its channel, its sections and the gauges
// that speak for it are known.
#include "engine/water/channel.hpp"
#include "engine/water/lane.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright {

class ReachAtFlow {
 public:
  ReachAtFlow(const River& river, const Reach& reach, const PerCase<Discharge>& own);

  // Of a water as typed. `noted_at` is the whole river's flow, as the note has it.
  [[nodiscard]] Measured<Lane> lane_of(const Water& typed) const;

 private:
  const River& river_;
  const Reach& reach_;
  PerCase<Discharge> own_;
  Channel channel_;
  SurfaceLaw surface_;
};

}  // namespace floatwright
