#include "engine/trip/planned_reach.hpp"

#include <algorithm>

#include "engine/trip/bands.hpp"
#include "engine/trip/closed_water.hpp"

namespace floatwright {
namespace {

template <class T>
Measured<Band<T>> printed(const Measured<PerCase<T>>& cases) {
  if (!cases.has_value()) return Absent{cases.why_absent()};
  return band_of(*cases);
}

Measured<Discharge> best_whole_flow(const RiverDay& day, std::size_t reach, Instant t) {
  const auto flow = whole_flow(day, reach, t);
  if (!flow.has_value()) return Absent{flow.why_absent()};
  return flow->middle;
}

void add_stop(const River& river, const TimedPassage& row, PlannedReach& reach) {
  if (row.passage.portages.empty()) return;
  reach.portage_at_end = true;
  for (const std::size_t i : row.passage.portages) {
    const Hazard& hazard = river.hazards[i];
    const bool alone = row.passage.portages.size() == 1;
    reach.stop_sentence += reach.stop_sentence.empty() ? "" : " ";
    reach.stop_sentence += hazard.what;
    if (!hazard.how.empty() || !alone) reach.stop_sentence += ": " + (hazard.how.empty() ? "PORTAGE." : hazard.how);
  }
  reach.stop_time = row.portage;
}

}  // namespace

Duration fishing_in(const TimedPassage& row, const std::optional<Instant>& stop_by) {
  const Duration all = row.fishing();
  if (!stop_by || *stop_by >= row.leave || row.leave <= row.arrive) return all;
  const Duration before = duration(std::max(*stop_by - row.arrive, Period{0}));
  return all * (before / duration(row.leave - row.arrive));
}

PlannedReach planned_reach(const RiverDay& day, const TimedPassage& row) {
  PlannedReach reach;
  reach.id = row.passage.id;
  reach.name = row.passage.name;
  reach.named = row.passage.named_reach.has_value() || row.passage.spot.has_value();
  reach.from = row.passage.from;
  reach.to = row.passage.to;
  reach.arrive = row.arrive;
  reach.leave = row.leave;
  reach.read_at = row.read_at();
  reach.float_time = row.afloat;
  reach.stops = row.stops;
  reach.lunch = row.lunch > Duration{};
  reach.described = is_described(day, row.passage);
  reach.discharge = printed(known_flow(day, row.passage.reach, reach.read_at));
  reach.temperature = printed(known_temperature(day, row.passage.reach, reach.read_at));
  reach.whole_flow = best_whole_flow(day, row.passage.reach, reach.read_at);
  if (row.passage.reach < day.flows.source.size()) reach.flow_source = day.flows.source[row.passage.reach];
  if (row.passage.reach < day.temperatures.source.size()) {
    reach.temperature_source = day.temperatures.source[row.passage.reach];
  }
  if (!row.fished && row.kept_out.empty())
    reach.closed_why = why_closed(day.river, closures_met(day, row.passage, row.arrive, row.leave));
  reach.kept_out = row.kept_out;
  add_stop(day.river, row, reach);
  return reach;
}

std::string why_not_fished(const PlannedReach& reach, Duration fishing) {
  if (!reach.closed_why.empty()) return "closed: " + reach.closed_why;
  if (!reach.kept_out.empty()) return reach.kept_out;
  return fishing > Duration{} ? "" : "NO FISHING: too warm";
}

}  // namespace floatwright
