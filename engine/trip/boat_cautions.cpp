// What can hurt the boat: hazards and portages, its limits, the dark, new wood.
#include <algorithm>
#include <set>

#include "engine/forecast/release_plan.hpp"
#include "engine/trip/cautions.hpp"
#include "engine/trip/flow_limits.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

// judgement: a week's highest flow that much over the present one has moved wood
constexpr double kHighWater = 1.5;
constexpr Period kHighWaterWithin = std::chrono::hours{7 * 24};

// What a ramping dam lets down day by day is no high water.
bool ramps_above(const River& river, const GaugeSite& gauge) { return dam_above(river, gauge).dam != nullptr; }

// Told unless a flow was typed for it and this one is surely on the harmless side.
bool hazard_stands(const RiverDay& day, const Hazard& hazard, const TimedPassage& row) {
  const auto flow = known_flow(day, day.graph.at(hazard.place).value_or(row.passage.reach), row.read_at());
  if (!flow.has_value() || (!hazard.above_flow && !hazard.least_flow)) return true;
  return (hazard.above_flow && flow->high > *hazard.above_flow) ||
         (hazard.least_flow && flow->low < *hazard.least_flow);
}

Caution hazard_caution(const Hazard& hazard, CautionKind kind, const std::string& where, Instant at) {
  Caution caution{.kind = kind, .weight = weight_of(kind), .where = where, .about = hazard.what};
  caution.at = at;
  caution.text = hazard.how;
  caution.basis = "typed in the river file";
  caution.flow_limit = hazard.above_flow ? hazard.above_flow : hazard.least_flow;
  return caution;
}

}  // namespace

void add_hazards(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  for (const TimedPassage& row : times.rows) {
    for (const Hazard* hazard : hazards_in(day.river, row.passage.from, row.passage.to)) {
      const bool told_as_portage = hazard->must_portage && hazard->place < times.rows.front().passage.from;
      if (told_as_portage || !hazard_stands(day, *hazard, row)) continue;
      cautions.push_back(hazard_caution(*hazard, CautionKind::Hazard, row.passage.name, row.arrive));
    }
    for (const std::size_t i : row.passage.portages) {
      const Hazard& hazard = day.river.hazards[i];
      Caution portage = hazard_caution(hazard, CautionKind::Portage, row.passage.name, row.leave);
      portage.time = row.portage;
      if (!hazard.portage_time) portage.basis += "; the time it takes is not typed, an hour is taken";
      cautions.push_back(portage);
    }
  }
}

// Each place once for too little and once for too much.
void add_boat_limits(const std::vector<BrokenLimit>& broken, std::vector<Caution>& cautions) {
  std::set<std::pair<std::string, bool>> told;
  for (const BrokenLimit& limit : broken) {
    if (!told.insert({limit.where, *limit.flow > *limit.flow_limit}).second) continue;
    Caution caution{.kind = CautionKind::BoatLimit, .weight = weight_of(CautionKind::BoatLimit), .where = limit.where};
    if (limit.kind == LimitKind::HazardFlow) caution.about = limit.where;
    caution.basis = "typed in the river file";
    caution.flow = limit.flow;
    caution.flow_limit = limit.flow_limit;
    cautions.push_back(caution);
  }
}

void add_dark(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  const SunDay sun = sun_over(day, times.rows.back().passage.to);
  Caution caution{.kind = CautionKind::Dark, .weight = weight_of(CautionKind::Dark), .basis = "the sun's place"};
  if (!sun.sunset.has_value()) {
    const bool day_long = sun.sunset.why_absent() == "sun all day";
    if (day_long) return;
    caution.text = "Sunset unknown: " + sun.sunset.why_absent() + ".";
    cautions.push_back(caution);
    return;
  }
  if (times.off_by <= *sun.sunset) return;
  caution.from = *sun.sunset;
  caution.at = times.end;
  caution.to = times.off_by;
  cautions.push_back(caution);
}

void add_wood(const RiverDay& day, std::vector<Caution>& cautions) {
  for (std::size_t g = 0; g < day.records.size() && g < day.river.gauges.size(); ++g) {
    if (ramps_above(day.river, day.river.gauges[g])) continue;
    const auto& series = day.records[g].discharge;
    if (series.empty()) continue;
    std::size_t highest = series.size() - 1;
    for (std::size_t i = 0; i < series.size(); ++i) {
      const bool recent = day.now - series.times[i] <= kHighWaterWithin;
      if (recent && series.values[i] > series.values[highest]) highest = i;
    }
    if (series.values[highest] < kHighWater * series.values.back()) continue;
    Caution caution{.kind = CautionKind::WoodAfterHighWater, .weight = weight_of(CautionKind::WoodAfterHighWater)};
    caution.about = day.river.gauges[g].name.empty() ? day.river.gauges[g].id : day.river.gauges[g].name;
    caution.at = series.times[highest];
    caution.flow = series.values[highest];
    caution.flow_after = series.values.back();
    caution.basis = "judgement: high water moves wood";
    caution.our_judgement = true;
    cautions.push_back(caution);
  }
}

}  // namespace floatwright
