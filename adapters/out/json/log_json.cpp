#include "adapters/out/json/log_json.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/out/json/plan_values.hpp"
#include "adapters/out/state/fingerprint.hpp"
#include "engine/river/names.hpp"

namespace floatwright {
namespace {

// To a tenth of a millimetre or of a litre a second: what was typed in feet comes back as typed.
double rounded(double value) { return std::round(value * 1e4) / 1e4; }

Json flow_json(const Band<Discharge>& flow) {
  return {{"low", rounded(flow.low.si())}, {"best", rounded(flow.best.si())}, {"high", rounded(flow.high.si())}};
}

void put_float(Json& line, const FloatMet& trip) {
  line["put_in"] = trip.from;
  line["take_out"] = trip.to;
  line["taken_out_at"] = utc(trip.taken_out);
  line["stopped_min"] = rounded(in_minutes(trip.stopped));
  line["stopped_noted"] = trip.stopped_noted;
  if (!trip.boat.empty()) line["boat"] = trip.boat;
}

void put_water(Json& line, const LogEntry& entry) {
  line["where"] = entry.where;
  if (entry.water) line["water"] = word_for(*entry.water);
  if (entry.depth) line["depth_m"] = rounded(in_metres(*entry.depth));
  if (entry.by_count) line["by_count"] = true;
  if (entry.surface_speed) line["surface_speed_m_s"] = rounded(in_metres_per_second(*entry.surface_speed));
  if (entry.bottom) line["bottom"] = *entry.bottom;
  if (!entry.rod.empty()) line["rod"] = entry.rod;
  if (entry.count) line["count_s"] = rounded(in_seconds(*entry.count));
}

// What the person met, without what was believed.
Json met_json(const LogEntry& entry) {
  Json line = Json::object();
  line["at"] = utc(entry.at);
  if (entry.trip)
    put_float(line, *entry.trip);
  else
    put_water(line, entry);
  if (entry.temperature) line["water_temperature_c"] = rounded(in_celsius(*entry.temperature));
  return line;
}

void put_fly(Json& line, const LogEntry& entry) {
  if (!entry.fly) return;
  line["fly_depth_m"] = rounded(in_metres(entry.fly->depth));
  line["fly_sd_ln"] = rounded(entry.fly->sd_ln);
}

void put_flows(Json& line, const LogEntry& entry) {
  if (entry.flow) line["flow_m3_s"] = flow_json(*entry.flow);
  if (entry.trip && entry.trip->flow_at_end) line["flow_at_take_out_m3_s"] = flow_json(*entry.trip->flow_at_end);
}

// What is typed keeps its bytes; those that are no UTF-8 become the replacement character.
std::string text_of(const Json& line) { return line.dump(-1, ' ', false, Json::error_handler_t::replace); }

Json correction_json(const Correction& met, double now, double noted) {
  return {{"entries", met.entries}, {"now", rounded(now)}, {"noted", rounded(noted)},
          {"ln", rounded(met.ln)},  {"sd_ln", rounded(kPriorSd * met.scatter_left)}};
}

Json water_json(const LearnedWater& water) {
  Json object{{"where", water.where.name}, {"water", word_for(water.type)}};
  object["at_flow_m3_s"] = rounded(water.noted_at.si());
  object["depth_m"] = correction_json(water.depth, std::exp(water.depth.ln) * water.noted_depth.si(), water.noted_depth.si());
  object["surface_speed_m_s"] =
      correction_json(water.speed, std::exp(water.speed.ln) * water.noted_speed.si(), water.noted_speed.si());
  return object;
}

Json entries_json(const std::vector<LogEntry>& entries) {
  Json list = Json::array();
  for (const LogEntry& entry : entries) {
    Json object = met_json(entry);
    object["id"] = entry.id;
    put_fly(object, entry);
    put_flows(object, entry);
    list.push_back(std::move(object));
  }
  return list;
}

}  // namespace

std::string id_of(const LogEntry& entry) {
  Json met = met_json(entry);
  put_fly(met, entry);
  return fmt::format("{:016x}", fingerprint(text_of(met))).substr(4);
}

std::string entry_line(const LogEntry& entry, Instant logged_at) {
  Json line{{"schema_version", 1}, {"id", entry.id}, {"logged_at", utc(logged_at)}};
  if (!entry.typed.empty()) line["typed"] = entry.typed;
  line.update(met_json(entry));
  put_fly(line, entry);
  put_flows(line, entry);
  return text_of(line) + "\n";
}

std::string retract_line(const std::string& id, Instant logged_at) {
  return text_of({{"schema_version", 1}, {"retract", id}, {"logged_at", utc(logged_at)}}) + "\n";
}

std::string flow_line(const LogEntry& entry, Instant logged_at) {
  Json line{{"schema_version", 1}, {"flow_of", entry.id}, {"logged_at", utc(logged_at)}};
  put_flows(line, entry);
  return text_of(line) + "\n";
}

std::string log_document(const LogTold& told) {
  Json document{{"schema_version", 1}, {"kind", "log"}, {"river", told.river.name}};
  document["waters"] = Json::array();
  for (const LearnedWater& water : told.learned.waters) document["waters"].push_back(water_json(water));
  document["boats"] = Json::array();
  for (const LearnedPace& pace : told.learned.boats)
    document["boats"].push_back({{"boat", pace.boat}, {"floats", pace.pace.entries}, {"pace_ln", rounded(pace.pace.ln)},
                                 {"sd_ln", rounded(kPriorSd * pace.pace.scatter_left)}});
  document["teach_nothing"] = Json::array();
  for (const LogDoubt& doubt : told.learned.idle)
    document["teach_nothing"].push_back({{"id", told.entries[doubt.entry].id}, {"why", doubt.why}});
  document["contradictions"] = Json::array();
  for (const Contradiction& pair : told.learned.contradictions)
    document["contradictions"].push_back({told.entries[pair.entry].id, told.entries[pair.other].id});
  document["entries"] = entries_json(told.entries);
  document["retracted"] = entries_json(told.retracted);
  return document_text(document);
}

}  // namespace floatwright
