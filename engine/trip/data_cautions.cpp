// What the plan does not know: gauges silent, old or iced; flow unknown; depths guessed; rain.
#include <algorithm>

#include "engine/trip/cautions.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/provenance.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

Caution plain(CautionKind kind, const std::string& about, const std::string& basis) {
  return {.kind = kind, .weight = weight_of(kind), .about = about, .basis = basis};
}

// "Mill run, Cottonwood bend": every place once, in the river's order.
void add_place(std::string& list, const std::string& place) {
  if (list == place || list.ends_with(", " + place)) return;
  list += (list.empty() ? "" : ", ") + place;
}

// It speaks for hours to come.
bool follows(const OfficialForecast& forecast, Instant now) {
  return !forecast.flow.empty() && forecast.flow.times.back() > now;
}

std::string basis_of_doubt(bool official, bool weather) {
  return std::string(official ? "an official forecast of the flow is followed; " : "no official forecast is used; ") +
         (weather ? "rain is looked at as it is forecast" : "rain is not looked at");
}

struct Unknowns {
  std::string flow, guessed, likely, far, undescribed;
  std::vector<std::pair<KnownFlows, std::string>> beyond;  // where, by what is known
};

void add_beyond(Unknowns& found, const KnownFlows& known, const std::string& place) {
  auto same = std::ranges::find(found.beyond, known, &std::pair<KnownFlows, std::string>::first);
  if (same == found.beyond.end()) same = found.beyond.insert(same, {known, ""});
  add_place(same->second, place);
}

void look(const PlannedReach& reach, Unknowns& found) {
  if (!reach.discharge.has_value()) add_place(found.flow, reach.name);
  if (!reach.closed_why.empty()) return;
  if (reach.waters.empty()) add_place(found.undescribed, reach.name);
  if (!reach.described && !reach.waters.empty()) add_place(found.likely, reach.name);
  for (const PlannedWater& water : reach.waters) {
    if (reach.described && water.depth.has_value() && water.source == DepthSource::Guessed) add_place(found.guessed, reach.name);
    if (water.depth.has_value() && water.far_from_note) add_place(found.far, reach.name);
    if (water.depth.has_value() && water.beyond) add_beyond(found, *water.beyond, reach.name);
  }
}

void add_if_any(CautionKind kind, const std::string& where, const std::string& text, std::vector<Caution>& cautions) {
  if (where.empty()) return;
  cautions.push_back({.kind = kind, .weight = weight_of(kind), .where = where, .text = text, .basis = "your notes"});
}

}  // namespace

void add_gauge_cautions(const RiverDay& day, std::vector<Caution>& cautions) {
  for (std::size_t g = 0; g < day.river.gauges.size(); ++g) {
    const GaugeSite& site = day.river.gauges[g];
    const std::string name = site.name.empty() ? site.id : site.name;
    const GaugeRecord record = g < day.records.size() ? day.records[g] : GaugeRecord{};
    if (is_silent(record)) {
      cautions.push_back(plain(CautionKind::MissingGauge, name, "no answer from its service"));
      continue;
    }
    if (record.ice_now) cautions.push_back(plain(CautionKind::Ice, name, "the service marks the newest reading as ice"));
    const auto read = newest_usable(record);
    if (!read) cautions.push_back(plain(CautionKind::MissingGauge, name, "it answered without a usable reading of flow"));
    if (!read || record.ice_now || !is_old(*read, day.now)) continue;
    Caution old = plain(CautionKind::OldReading, name, "the time of its newest usable reading");
    old.at = *read;
    old.age = duration(day.now - *read);
    cautions.push_back(old);
  }
}

void add_unknown_water(const std::vector<PlannedReach>& reaches, std::vector<Caution>& cautions) {
  Unknowns found;
  for (const PlannedReach& reach : reaches) look(reach, found);
  add_if_any(CautionKind::UnknownFlow, found.flow, "", cautions);
  add_if_any(CautionKind::GuessedDepth, found.guessed, "Depth and speed are guessed here: nobody noted them.", cautions);
  add_if_any(CautionKind::GuessedDepth, found.likely,
             "Nobody described this water: depth and speed are guessed from its channel, sound it first.", cautions);
  add_if_any(CautionKind::GuessedDepth, found.far, "Noted at a flow far from this one: depth and speed are less certain.", cautions);
  for (const auto& [known, where] : found.beyond) {
    add_if_any(CautionKind::GuessedDepth, where, "", cautions);
    cautions.back().flow = known.from;
    cautions.back().flow_after = known.to;
  }
  add_if_any(CautionKind::GuessedDepth, found.undescribed, "Nobody described this water: no depth, no line.", cautions);
}

void add_forecast_doubt(const RiverDay& day, std::vector<Caution>& cautions) {
  const bool any_ahead = std::find(day.flows.known.begin(), day.flows.known.end(), true) != day.flows.known.end();
  if (!any_ahead) return;
  const bool official = std::any_of(day.records.begin(), day.records.end(),
                                    [&](const GaugeRecord& r) { return r.official && follows(*r.official, day.now); });
  Caution doubt = plain(CautionKind::ForecastDoubt, "", basis_of_doubt(official, day.weather != nullptr));
  const bool a_night_between = local_date(day.now, day.river.time_zone) < day.day;
  doubt.text = official          ? "If it rains otherwise than the agency reckons all of this is wrong."
               : a_night_between ? "If it rains tonight all of this is wrong."
                                 : "If it rains all of this is wrong.";
  cautions.push_back(doubt);
}

}  // namespace floatwright
