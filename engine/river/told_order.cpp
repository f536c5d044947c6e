#include "engine/river/told_order.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace floatwright {
namespace {

// Miles up from the mouth, turned so that the uppermost is least; infinite without a place.
double down_the_river(const River& river, const GaugeSite& gauge) {
  if (gauge.place) return -gauge.place->si();
  const auto joins = std::ranges::find(river.tributaries, gauge.id, &Tributary::gauge);
  return joins == river.tributaries.end() ? HUGE_VAL : -joins->joins_at.si();
}

void put_in_order(std::vector<Water>& waters) {
  const auto least_depth = [](const Water& water) {
    const auto least = std::ranges::min_element(water.notes, {}, &WaterNote::depth);
    return least == water.notes.end() ? 0.0 : in_metres(least->depth);
  };
  std::ranges::stable_sort(waters, {}, [&](const Water& water) {
    return std::tuple(-water.fishing_time, water.type, least_depth(water));
  });
}

}  // namespace

void put_in_told_order(River& river) {
  std::ranges::stable_sort(river.gauges, {}, [&](const GaugeSite& gauge) {
    return std::tuple(down_the_river(river, gauge), gauge.id);
  });
  std::ranges::stable_sort(river.accesses, {}, [](const Access& a) { return std::tuple(-a.place.si(), a.id); });
  std::ranges::stable_sort(river.hazards, {}, [](const Hazard& h) {
    return std::tuple(-h.place.si(), h.what, h.how, h.above_flow, h.least_flow);
  });
  std::ranges::stable_sort(river.closures, {}, [](const Closure& c) {
    const Duration begins = c.hours ? c.hours->from : Duration{};
    return std::tuple(-c.from.si(), -c.to.si(), begins, c.first_day, c.last_day, c.why, c.source);
  });
  std::ranges::stable_sort(river.hatches, {}, [](const Hatch& h) { return std::tuple(h.hours.from, h.hours.to, h.name); });
  for (NamedReach& reach : river.reaches) put_in_order(reach.waters);
  for (StretchNote& note : river.notes) put_in_order(note.waters);
  for (Spot& spot : river.spots) put_in_order(spot.waters);
}

}  // namespace floatwright
