#include "engine/trip/day_facts.hpp"

#include "engine/trip/bands.hpp"
#include "engine/trip/cautions.hpp"
#include "engine/trip/gauges_ahead.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/provenance.hpp"

namespace floatwright {
namespace {

constexpr int kFirstHour = 6, kLastHour = 20;
constexpr Period kCourseLooksBack = std::chrono::hours{36};

// The stretch that the day's facts are told for; a spot stands, whatever its verdict.
const PlannedStretch* recommended(const DayPlan& plan) {
  const bool any = !plan.stretches.empty() &&
                   (plan.stretches.front().verdict == Verdict::Recommended || plan.stretches.front().spot);
  return any ? &plan.stretches.front() : nullptr;
}

// It rises over the put-in and sets over the take-out, by which the dark is judged.
void add_sun(const RiverDay& day, RiverPlace put_in, RiverPlace take_out, DayPlan& plan) {
  SunDay sun = sun_over(day, put_in);
  const SunDay evening = sun_over(day, take_out);
  sun.sunset = evening.sunset;
  sun.civil_dusk = evening.civil_dusk;
  plan.sun_known = sun.sunrise.has_value() && sun.sunset.has_value();
  if (!plan.sun_known) plan.sun_why = sun.sunrise.has_value() ? sun.sunset.why_absent() : sun.sunrise.why_absent();
  if (sun.sunrise.has_value()) plan.sunrise = *sun.sunrise;
  if (sun.sunset.has_value()) plan.sunset = *sun.sunset;
  if (sun.civil_dawn.has_value()) plan.civil_dawn = *sun.civil_dawn;
  if (sun.civil_dusk.has_value()) plan.civil_dusk = *sun.civil_dusk;
}

Measured<Band<Discharge>> flow_band(const RiverDay& day, std::size_t reach, Instant t) {
  const auto flow = known_flow(day, reach, t);
  return flow.has_value() ? Measured<Band<Discharge>>{band_of(*flow)} : Absent{flow.why_absent()};
}

}  // namespace

std::vector<HourRow> hour_rows(const RiverDay& day, RiverPlace place) {
  std::vector<HourRow> rows;
  const auto reach = day.graph.at(place);
  for (int hour = kFirstHour; reach && hour <= kLastHour; ++hour) {
    HourRow row;
    row.at = at_local(day.day, hours(hour), day.river.time_zone);
    row.flow = flow_band(day, *reach, row.at);
    const auto water = known_temperature(day, *reach, row.at);
    row.temperature = water.has_value() ? Measured<Band<Temperature>>{band_of(*water)} : Absent{water.why_absent()};
    rows.push_back(row);
  }
  return rows;
}

std::vector<FlowRow> flow_course(const RiverDay& day, RiverPlace place) {
  std::vector<FlowRow> rows;
  const auto reach = day.graph.at(place);
  const Instant from = day.now - kCourseLooksBack, to = local_day(day.day, day.river.time_zone).end;
  const TimeGrid& grid = day.flows.grid;
  for (std::size_t i = 0; reach && i < grid.count; ++i)
    if (grid.at(i) >= from && grid.at(i) <= to) rows.push_back({grid.at(i), flow_band(day, *reach, grid.at(i))});
  return rows;
}

void add_day_facts(const RiverDay& day, DayPlan& plan) {
  const PlannedStretch* best = recommended(plan);
  plan.main_gauge = main_gauge(day.river, plan.outlooks, best);
  plan.fronts = day.flows.fronts;
  plan.follows_dam = day.flows.follows_dam;
  if (!day.river.accesses.empty()) {
    const Access& first = day.river.accesses.front();
    const RiverPlace place = best != nullptr ? best->from_place : first.place;
    add_sun(day, place, best != nullptr ? best->to_place : place, plan);
    plan.hours = hour_rows(day, place);
    plan.course = flow_course(day, place);
    plan.course_at = best != nullptr ? best->from_name : first.name;
  }
  add_provenance(day, plan);
  if (!known_zone(day.river.time_zone)) {
    plan.notes.push_back("The time zone \"" + day.river.time_zone + "\" is not known: all hours are UTC.");
  }
  plan.cautions = day_cautions(day, plan.outlooks);
  if (best != nullptr && is_wading(*best)) {
    for (Caution& caution : plan.cautions) caution.on_foot = true;
  }
}

}  // namespace floatwright
