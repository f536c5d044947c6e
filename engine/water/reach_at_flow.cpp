#include "engine/water/reach_at_flow.hpp"

#include "engine/water/described.hpp"

namespace floatwright {

ReachAtFlow::ReachAtFlow(const River& river, const Reach& reach, const PerCase<Discharge>& own)
    : river_(river), reach_(reach), own_(own), channel_(channel_of(river, reach, own.middle)), surface_(surface_law_of(river, reach)) {}

Measured<Lane> ReachAtFlow::lane_of(const Water& typed) const {
  const Water here = water_in(river_, reach_, typed);
  auto there = lane(here, channel_, own_, surface_);
  if (!there.has_value()) return there;
  const Discharge noted = there->noted_at;
  for (std::size_t i = 0; i < here.notes.size(); ++i)
    if (here.notes[i].at_flow == noted) there.value().noted_at = typed.notes[i].at_flow;
  return there;
}

}  // namespace floatwright
