#include "engine/water/gauge_near.hpp"

#include <algorithm>

namespace floatwright {
namespace {

// From the gauge to the nearer end of the reach, that end included and the gauge not.
struct Way {
  RiverPlace gauge, reach;
  [[nodiscard]] bool holds(RiverPlace place) const {
    const auto [low, high] = std::minmax(gauge, reach);
    return low <= place && place <= high && place != gauge;
  }
};

bool one_flow(const River& river, const Way& way) {
  const auto on_way = [&](RiverPlace place) { return way.holds(place); };
  const auto splits = [&](const SideChannel& side) { return on_way(side.leaves) || on_way(side.returns); };
  const auto in_lake = [&](const Lake& lake) {
    return (lake.from && on_way(*lake.from)) || (lake.to && on_way(*lake.to));
  };
  return std::ranges::none_of(river.dams, on_way, &Dam::place) &&
         std::ranges::none_of(river.tributaries, on_way, &Tributary::joins_at) &&
         std::ranges::none_of(river.diversions, on_way, &Diversion::place) &&
         std::ranges::none_of(river.side_channels, splits) && std::ranges::none_of(river.lakes, in_lake);
}

}  // namespace

std::vector<GaugeNear> gauges_of_one_flow(const River& river, const Reach& reach) {
  std::vector<GaugeNear> found;
  if (reach.side_channel || reach.lake) return found;
  for (std::size_t i = 0; i < river.gauges.size(); ++i) {
    const auto& place = river.gauges[i].place;
    if (!place) continue;
    const RiverPlace nearer = std::clamp(*place, reach.to, reach.from);
    if (one_flow(river, {*place, nearer})) found.push_back({i, std::max(nearer - *place, *place - nearer)});
  }
  std::ranges::stable_sort(found, {}, &GaugeNear::away);
  return found;
}

}  // namespace floatwright
