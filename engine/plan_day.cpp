#include "engine/plan_day.hpp"

#include <algorithm>

#include "engine/choice/tables_needed.hpp"
#include "engine/trip/compare.hpp"
#include "engine/trip/day_facts.hpp"
#include "engine/trip/fast_rise.hpp"
#include "engine/trip/gauges_ahead.hpp"
#include "engine/trip/likely_waters.hpp"
#include "engine/trip/spot_day.hpp"

namespace floatwright {
namespace {

std::string why_no_stretch(const DayInputs& in) {
  if (in.spot) return "the spot lies beyond the ends of the river as typed";
  if (in.river.accesses.size() < 2) return "the river has fewer than two accesses";
  if (in.settings.from || in.settings.to) return "no stretch leads downstream between the accesses asked for";
  return "no access lies downstream of another";
}

std::vector<Platform> platforms_of_day(const DayInputs& in) {
  if (in.spot) return {in.river.spots[*in.spot].platform};
  return platforms_fished(in.settings.preferences);
}

}  // namespace

WaterOfDay water_of_day(const DayInputs& in) {
  WaterOfDay water;
  water.graph = river_graph(in.river);
  const TimeGrid grid = hours_looked_at(in.river, in.records, in.day, in.now);
  water.outlooks = outlooks_of(in.river, water.graph, {in.records, in.tuned, in.weather ? &*in.weather : nullptr}, grid, in.now);
  water.flows = river_flows(in.river, water.graph, water.outlooks, grid, in.now);
  water.temperatures = river_temperatures({.river = in.river,
                                           .graph = water.graph,
                                           .records = in.records,
                                           .flows = water.flows,
                                           .grid = grid,
                                           .now = in.now,
                                           .air = in.weather ? in.weather->air : Series<Temperature>{},
                                           .tuned = in.tuned.temperatures});
  water.likely = likely_waters(river_day(in, water));
  return water;
}

RiverDay river_day(const DayInputs& in, const WaterOfDay& water) {
  return {in.river,    water.graph,        in.settings, in.tackle, in.judgement,   in.records,
          water.flows, water.temperatures, in.day,      in.now,    in.tables.get(),
          in.weather ? &*in.weather : nullptr, &water.likely, &in.learned,
          std::ranges::any_of(water.outlooks, comes_up_fast)};
}

void add_tables_needed(TablesNeeded& needed, const DayInputs& in) {
  add_tables_needed(needed, in.tackle, in.settings.preferences, platforms_of_day(in), in.judgement);
}

DayPlan planned_day(const DayInputs& in, const WaterOfDay& water, WaterBook& book, const DoEach& do_each) {
  DayPlan plan;
  plan.made_at = in.now;
  plan.day = in.day;
  plan.time_zone = in.river.time_zone;
  plan.outlooks = water.outlooks;

  const RiverDay day = river_day(in, water);
  plan.why_no_stretch = why_no_day(in.river, in.records, in.day, in.now);
  if (plan.why_no_stretch.empty()) {
    // timetable, choices of line, rods and cautions of each
    plan.stretches = in.spot ? day_at_spot(day, *in.spot, do_each) : compared_stretches(day, book, do_each);
    if (plan.stretches.empty()) plan.why_no_stretch = why_no_stretch(in);
  }
  add_day_facts(day, plan);
  return plan;
}

DayPlan plan_day(const DayInputs& in, const DoEach& do_each) {
  const WaterOfDay water = water_of_day(in);
  const RiverDay day = river_day(in, water);
  WaterBook book(day);
  return planned_day(in, water, book, do_each);
}

BoatDay boat_day(DayInputs in, const DoEach& do_each) {
  DayPlan plan = plan_day(in, do_each);
  return {std::move(in), std::move(plan)};
}

}  // namespace floatwright
