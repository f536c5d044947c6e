#include "engine/trip/heat.hpp"

#include <algorithm>

#include "engine/trip/local_time.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

constexpr Period kLook = std::chrono::minutes{15};
constexpr Period kBeforeTheStop = std::chrono::minutes{30};

const char* const kBasisHeat =
    "recapture of released cutthroat by water temperature (Idaho study); state advisories on warm water";
const char* const kPublishedHeat = "Idaho study, state advisories";
const char* const kPublishedBullTrout = "Montana rule";

bool lives_here(const River& river, const std::string& fish) {
  return std::find(river.fish.begin(), river.fish.end(), fish) != river.fish.end();
}

void meet(HeatOfTrip& heat, const HeatLimits& limits, const HeatMet& met) {
  if (!heat.highest || met.temperature > heat.highest->temperature) heat.highest = met;
  if (!heat.caution && met.temperature >= limits.caution) heat.caution = met;
  const auto here = [&](const HeatMet& other) { return other.where == met.where; };
  if (met.temperature >= limits.stop && std::ranges::none_of(heat.stops, here)) heat.stops.push_back(met);
}

void look(const RiverDay& day, HeatOfTrip& heat, const HeatLimits& limits, const Passage& passage, Instant from, Instant to) {
  for (Instant t = from;; t = std::min(t + kLook, to)) {
    const auto there = known_temperature(day, passage.reach, t);
    if (there.has_value()) meet(heat, limits, {there->high, t, passage.name});
    if (!there.has_value()) heat.unknown_somewhere = true;
    if (t >= to) return;
  }
}

Caution caution_from(CautionKind kind, const HeatMet& met, const HeatLimits& limits) {
  const bool stop = kind == CautionKind::HeatStop, typed = stop ? limits.stop_typed : limits.caution_typed;
  const Temperature limit = stop ? limits.stop : limits.caution;
  Caution caution{.kind = kind, .weight = weight_of(kind), .where = met.where, .about = limits.fish, .from = met.at};
  caution.basis = typed ? "your own limit" : kBasisHeat;
  caution.typed_limit = typed;
  if (!typed) caution.published = limits.fish == "bull trout" ? kPublishedBullTrout : kPublishedHeat;
  caution.temperature = met.temperature;
  caution.temperature_limit = limit;
  return caution;
}

}  // namespace

HeatLimits heat_limits(const River& river, const Settings& settings) {
  HeatLimits limits{.fish = "trout"};
  if (lives_here(river, "cutthroat")) limits = {fahrenheit(64.0), fahrenheit(68.0), "cutthroat"};
  if (lives_here(river, "bull_trout") || lives_here(river, "bull trout")) {
    limits = {fahrenheit(57.0), fahrenheit(60.0), "bull trout"};
  }
  limits.stop_typed = settings.heat_stop && *settings.heat_stop < limits.stop;
  limits.caution_typed = settings.heat_caution && *settings.heat_caution < limits.caution;
  if (limits.stop_typed) limits.stop = *settings.heat_stop;
  if (limits.caution_typed) limits.caution = *settings.heat_caution;
  if (limits.stop < limits.caution) {
    limits.caution = limits.stop;
    limits.caution_typed = limits.stop_typed;
  }
  return limits;
}

HeatOfTrip heat_of(const RiverDay& day, const Timetable& times, const HeatLimits& limits) {
  HeatOfTrip heat;
  if (times.rows.empty()) return heat;
  const Instant noon = at_local(day.day, hours(12.0), day.river.time_zone);
  const TimedPassage& first = times.rows.front();
  if (first.passage.spot) {  // one place, looked at in the same minutes however its hours are cut
    look(day, heat, limits, first.passage, std::min(noon, first.arrive), times.rows.back().leave);
  } else {
    if (times.launch > noon) look(day, heat, limits, first.passage, noon, times.launch);
    for (const TimedPassage& row : times.rows) look(day, heat, limits, row.passage, row.arrive, row.leave);
  }
  if (!heat.stops.empty()) heat.stop_by = heat.stops.front().at - kBeforeTheStop;
  return heat;
}

std::optional<BrokenLimit> heat_limit(const HeatOfTrip& heat, const HeatLimits& limits, Instant launch) {
  if (!heat.stop_by || *heat.stop_by > launch) return std::nullopt;
  const HeatMet& met = heat.stops.front();
  return BrokenLimit{.kind = LimitKind::TooWarm, .where = met.where, .at = met.at, .at_limit = launch,
                     .temperature = met.temperature, .temperature_limit = limits.stop};
}

void add_heat_cautions(const RiverDay& day, const HeatOfTrip& heat, const HeatLimits& limits,
                       std::vector<Caution>& cautions) {
  for (const HeatMet& met : heat.stops) {
    Caution stop = caution_from(CautionKind::HeatStop, met, limits);
    stop.from = heat.stop_by;
    stop.to = local_day(day.day, day.river.time_zone).end;
    stop.at = met.at;
    cautions.push_back(stop);
  }
  if (heat.stops.empty() && heat.caution)
    cautions.push_back(caution_from(CautionKind::HeatCaution, *heat.caution, limits));
  if (heat.unknown_somewhere || !heat.highest) {
    cautions.push_back({.kind = CautionKind::HeatUnknown, .weight = weight_of(CautionKind::HeatUnknown), .basis = "no reading",
                        .temperature_limit = limits.stop});
  }
}

std::vector<Caution> with_first_heat_stop(std::vector<Caution> cautions) {
  const auto is_stop = [](const Caution& c) { return c.kind == CautionKind::HeatStop; };
  auto first = std::ranges::find_if(cautions, is_stop);
  if (first != cautions.end()) cautions.erase(std::remove_if(first + 1, cautions.end(), is_stop), cautions.end());
  return cautions;
}

}  // namespace floatwright
