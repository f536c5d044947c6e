#include "engine/temperature/water_path.hpp"

#include <algorithm>

#include "engine/routing/mean_flow.hpp"
#include "engine/temperature/heat_parcel.hpp"
#include "engine/temperature/nearest_gauge.hpp"
#include "engine/units/unit.hpp"
#include "engine/water/travelling_water.hpp"

namespace floatwright {
namespace {

constexpr double kBoatOverWater = 1.25;
constexpr Speed kStanding = Speed::from_si(0.01);
constexpr Length kSamePlace = Length::from_si(5.0);

Discharge middle_flow(const RiverFlows& flows, std::size_t reach) { return mean_flow(flows.flow.middle[reach]); }

struct WaterSpeed {
  Speed speed;
  bool by_float = false;
};

WaterSpeed water_speed(const PathInputs& in, const Reach& reach, const Channel& channel, Discharge q) {
  const MeanSpeed now = mean_speed(channel, q);
  if (reach.note) {
    const StretchNote& note = in.river.notes[*reach.note];
    if (note.float_time && *note.float_time > Duration{} && note.at_flow > Discharge{}) {
      const Speed boat = (note.from - note.to) / *note.float_time;
      return {boat * (now / mean_speed(channel, note.at_flow)) / kBoatOverWater, true};
    }
  }
  return {metres_per_second(in_metres_per_second(travelling_speed(channel, q))), false};
}

// Of the flow below the confluence; none where it is not known.
std::optional<double> share_joining(const PathInputs& in, const Reach& reach, std::size_t reach_index,
                                    std::size_t tributary) {
  const Discharge below = middle_flow(in.flows, reach_index);
  for (std::size_t g = 0; g < in.river.gauges.size() && g < in.records.size(); ++g)
    if (in.river.gauges[g].id == in.river.tributaries[tributary].gauge && !in.records[g].discharge.empty())
      return std::clamp(in.records[g].discharge.values.back() / below, 0.0, 1.0);
  if (reach.tributaries_at_start.size() > 1) return std::nullopt;
  Discharge above;
  for (const std::size_t r : reach.upstream) {
    if (!in.flows.known[r]) return std::nullopt;
    above = above + middle_flow(in.flows, r);
  }
  return std::clamp((below - above) / below, 0.0, 1.0);
}

bool warm_known(const PathInputs& in, std::size_t tributary) {
  for (std::size_t g = 0; g < in.warm_known.size(); ++g)
    if (in.river.gauges[g].id == in.river.tributaries[tributary].gauge) return in.warm_known[g];
  return false;
}

// What joins with a known temperature; Absent where what has none is too large to be left out.
Measured<std::vector<JoiningWater>> joining(const PathInputs& in, const Reach& reach, std::size_t reach_index) {
  std::vector<JoiningWater> waters;
  for (const std::size_t tributary : reach.tributaries_at_start) {
    const auto share = share_joining(in, reach, reach_index, tributary);
    if (share && warm_known(in, tributary))
      waters.push_back({tributary, *share});
    else if (!share || *share > kLargeTributary)
      return Absent{in.river.tributaries[tributary].name + " joins with water of unknown temperature"};
  }
  return waters;
}

}  // namespace

Measured<WaterPath> water_path(const PathInputs& in, RiverPlace from, RiverPlace to) {
  WaterPath path;
  path.timed_by_floats = true;
  for (const std::size_t r : in.graph.between(from, to)) {
    const Reach& reach = in.graph.reaches[r];
    const Length inside = std::min(reach.from, from) - std::max(reach.to, to);
    if (inside < kSamePlace) continue;
    if (reach.lake) return Absent{in.river.lakes[*reach.lake].name + " lies between"};
    if (reach.dam_at_start && !path.pieces.empty())
      return Absent{in.river.dams[*reach.dam_at_start].name + " lies between"};
    if (!in.flows.known[r] || !(middle_flow(in.flows, r) > Discharge{})) return Absent{"its flow is not known"};
    const Discharge q = middle_flow(in.flows, r);
    const Channel channel = channel_of(in.river, reach, q);
    const WaterSpeed speed = water_speed(in, reach, channel, q);
    if (speed.speed < kStanding) return Absent{"its water hardly moves"};
    PathPiece piece{r, reach.length / speed.speed, heat_time(mean_depth(channel, q))};
    if (!path.pieces.empty()) {
      auto waters = joining(in, reach, r);
      if (!waters) return Absent{waters.why_absent()};
      piece.joining = std::move(*waters);
    }
    path.timed_by_floats = path.timed_by_floats && speed.by_float;
    path.pieces.push_back(std::move(piece));
  }
  if (path.pieces.empty()) return Absent{"no water lies between"};
  return path;
}

}  // namespace floatwright
