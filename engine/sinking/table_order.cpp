#include "engine/sinking/table_order.hpp"

#include <numeric>
#include <utility>

#include "engine/sinking/pulled_cast.hpp"
#include "engine/sinking/rigged_line.hpp"

namespace floatwright {
namespace {

constexpr Length kAnyRod = feet(9.0);  // a rod's length plays no part in a swing or a retrieve

void add(std::vector<double>& physics, std::initializer_list<double> values) { physics.insert(physics.end(), values); }

void add_part(std::vector<double>& physics, const std::optional<LinePart>& part) {
  add(physics, {part ? 1.0 : 0.0});
  if (!part) return;
  add(physics, {part->length.si(), part->diameter.si(), part->density.si()});
  for (const auto& rate : {part->sink_rate_butt, part->sink_rate_end})
    add(physics, {rate ? 1.0 : 0.0, rate ? rate->si() : 0.0});
}

void add_technique(std::vector<double>& physics, const Technique& technique) {
  add(physics, {static_cast<double>(technique.method), static_cast<double>(technique.mending), technique.count.si(),
                technique.strip.si()});
}

// Of a cast's mean depth, for each degree, in the middle of the grid.
class Warming {
 public:
  Warming(const Tackle& tackle, const TableOrder& order, const DriftLimits& limits) {
    const SurfaceSpeed speed = table_speed(kRow);
    const Speed boat = metres_per_second(order.pace * in_metres_per_second(speed));
    const auto water = tabled_water(table_depth(kColumn), speed, kTableProfile, kWarm);
    warm_ = cast_paths(tackle, order.rig, order.techniques, {*water, boat, order.cast, kAnyRod, limits, {}});
  }
  [[nodiscard]] double deeper_per_c(const FishingTable& table, std::size_t technique) const {
    const double cool = mean_depth(table.nodes[kRow * kTableDepths + kColumn]);
    if (!warm_[technique] || !(cool > 0.0)) return 0.0;
    const double degrees_warmer = in_celsius(kWarm) - in_celsius(kTableTemperature);
    return (mean_depth(series_of(*warm_[technique])) / cool - 1.0) / degrees_warmer;
  }

 private:
  static double mean_depth(const CastSeries& series) {
    return std::accumulate(series.fly_m.begin(), series.fly_m.end(), 0.0) / kSeriesSamples;
  }
  static constexpr std::size_t kRow = 4, kColumn = 4;
  static constexpr Temperature kWarm = celsius(16.0);
  std::vector<Measured<CastPath>> warm_;
};

}  // namespace

Measured<TableOrder> table_order(const Tackle& tackle, const Rig& rig, Length cast, double pace,
                                 std::vector<Technique> techniques, const DriftLimits& limits) {
  if (techniques.empty()) return Absent{"no technique is asked for"};
  const auto hung = hung_weight(tackle.flies[rig.fly], rig.shot, water_at(kTableTemperature));
  if (!hung) return Absent{hung.why_absent()};
  const auto line = rigged_line(tackle, rig, techniques.front().method, cast);
  if (!line) return Absent{line.why_absent()};
  const SinkingPart sinking = sinking_part(tackle, rig);
  std::vector<double> physics;
  add(physics, {cast.si(), pace, line->least_out.si(), sinking.sink_rate.si(), sinking.whole_line ? 1.0 : 0.0});
  for (const auto& part : {std::optional(line->leader), line->sinking, line->floating}) add_part(physics, part);
  add(physics, {hung->towed.weight_in_water.si(), hung->towed.sink_rate.si(), hung->towed.towed_drag_area.si(),
                hung->broadside.si()});
  add(physics, {limits.longest_cast.si(), limits.hang_down.si(), limits.hang_down_stay.si()});
  for (const Technique& technique : techniques) add_technique(physics, technique);
  return TableOrder{rig, cast, pace, std::move(techniques), std::move(physics)};
}

CastsOverGrid casts_over_grid(const Tackle& tackle, const TableOrder& order, const DriftLimits& limits) {
  std::vector<TabledWater> waters;
  for (std::size_t speed = 0; speed < kTableSpeeds; ++speed)
    for (std::size_t depth = 0; depth < kTableDepths; ++depth)
      waters.push_back(*tabled_water(table_depth(depth), table_speed(speed), kTableProfile, kTableTemperature));
  std::vector<WaterAndBoat> places;
  for (const TabledWater& water : waters)
    places.push_back({&water, metres_per_second(order.pace * in_metres_per_second(water.surface_speed))});
  return pulled_casts(tackle, order.rig, order.techniques, {order.cast, limits, places});
}

TableSet fishing_tables(const Tackle& tackle, const TableOrder& order, const DriftLimits& limits) {
  TableSet tables(order.techniques.size(), FishingTable{});
  const CastsOverGrid casts = casts_over_grid(tackle, order, limits);
  for (std::size_t node = 0; node < casts.size(); ++node) {
    for (std::size_t t = 0; t < tables.size(); ++t) {
      const auto& cast = casts[node][t];
      if (!cast) tables[t].reset();
      if (!tables[t]) continue;
      tables[t]->leader = cast->leader;
      tables[t]->nodes[node] = series_of(*cast);
    }
  }
  const Warming warming(tackle, order, limits);
  for (std::size_t t = 0; t < tables.size(); ++t)
    if (tables[t]) tables[t]->deeper_per_c = warming.deeper_per_c(*tables[t], t);
  return tables;
}

}  // namespace floatwright
