#pragma once
// The way of the water from one place on the stem to another: how long it takes over each reach, how deep it is, and
// what joins. Water goes with the mean speed of the channel, not with the wave: a noted float time over 1.25 (the
// boat's thread is that much faster, judgement) carried to today's flow, else the channel's travelling speed
// (engine/water/travelling_water.hpp). At the mean middle flow of the hours asked for.
#include <vector>

#include "engine/readings/gauge_record.hpp"
#include "engine/river/graph.hpp"
#include "engine/routing/river_flows.hpp"

namespace floatwright {

struct JoiningWater {
  std::size_t tributary = 0;  // into River::tributaries
  double share = 0.0;         // of the water below the confluence
};

struct PathPiece {
  std::size_t reach = 0;  // into RiverGraph::reaches
  Duration travel, heat_time;
  std::vector<JoiningWater> joining{};  // at its upper end
};

struct WaterPath {
  std::vector<PathPiece> pieces;  // downstream, whole reaches
  bool timed_by_floats = false;   // a noted float time holds for every one
};

struct PathInputs {
  const River& river;
  const RiverGraph& graph;
  const RiverFlows& flows;
  const std::vector<GaugeRecord>& records;  // by River::gauges index
  std::vector<bool> warm_known;             // by River::gauges index: whether its water temperature is known
};
// Both ends are stations. Absent where the flow of a reach is not known, across a dam or a lake, and where water of
// unknown temperature joins with over a fifth of the flow, or with an unknown share of it.
[[nodiscard]] Measured<WaterPath> water_path(const PathInputs& in, RiverPlace from, RiverPlace to);

}  // namespace floatwright
