#include "adapters/in/gauges/usgs_water_data/stations.hpp"

#include <algorithm>

#include "adapters/in/calendar/written_period.hpp"
#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/feature_page.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int {
  kId = kFirstOwnSlot,
  kLongitude,
  kLatitude,
  kLocation,
  kName,
  kSiteType,
  kState,
  kZone,
  kDaylightSaving,
  kDrainageArea,
  kAltitude,
  kParameter,
  kStatistic,
  kUnit,
  kSublocation,
  kDescription,
  kPrimary,
  kComputation,
  kPeriod,
  kDataType,
  kBegin,
  kBeginUtc,
  kEnd,
  kEndUtc,
  kGap
};

const JsonShape& about_shape() {
  static const JsonShape kShape = feature_shape({{"/id", kId},
                                                 {"/geometry/coordinates/0", kLongitude},
                                                 {"/geometry/coordinates/1", kLatitude},
                                                 {"/properties/monitoring_location_id", kLocation},
                                                 {"/properties/monitoring_location_name", kName},
                                                 {"/properties/site_type", kSiteType},
                                                 {"/properties/state_name", kState},
                                                 {"/properties/time_zone_abbreviation", kZone},
                                                 {"/properties/uses_daylight_savings", kDaylightSaving},
                                                 {"/properties/drainage_area", kDrainageArea},
                                                 {"/properties/altitude", kAltitude},
                                                 {"/properties/parameter_code", kParameter},
                                                 {"/properties/statistic_id", kStatistic},
                                                 {"/properties/unit_of_measure", kUnit},
                                                 {"/properties/sublocation_identifier", kSublocation},
                                                 {"/properties/web_description", kDescription},
                                                 {"/properties/primary", kPrimary},
                                                 {"/properties/computation_identifier", kComputation},
                                                 {"/properties/computation_period_identifier", kPeriod},
                                                 {"/properties/data_type", kDataType},
                                                 {"/properties/begin", kBegin},
                                                 {"/properties/begin_utc", kBeginUtc},
                                                 {"/properties/end", kEnd},
                                                 {"/properties/end_utc", kEndUtc},
                                                 {"/properties/data_gap_interval", kGap}});
  return kShape;
}

std::optional<double> number_of(const JsonValue& value) { return row_value(value, {}).number; }

void set_text(std::string& text, const JsonValue& value) {
  if (!value.text.empty()) text = value.text;
}

// A service that repeats the station beside each series, or leaves half of it out, takes nothing away.
void set_station(StationAbout& station, const JsonRow& feature) {
  set_text(station.name, feature[kName]);
  set_text(station.site_type, feature[kSiteType]);
  set_text(station.state, feature[kState]);
  set_text(station.zone, feature[kZone]);
  if (const auto x = number_of(feature[kLongitude])) station.longitude_deg = x;
  if (const auto y = number_of(feature[kLatitude])) station.latitude_deg = y;
  if (feature[kDaylightSaving].text == "Y") station.daylight_saving = true;
  if (feature[kDaylightSaving].text == "N") station.daylight_saving = false;
  if (const auto area = number_of(feature[kDrainageArea])) station.drainage_area = square_miles(*area);
  if (const auto altitude = number_of(feature[kAltitude])) station.altitude = feet(*altitude);
}

// combined-metadata also tells of peaks and of what people measured on their visits.
bool is_series(const JsonRow& feature) {
  const std::string& type = feature[kDataType].text;
  return !feature[kComputation].is(Kind::Absent) && feature[kParameter].is(Kind::Text) && feature[kId].is(Kind::Text) &&
         (type.empty() || type.starts_with("Continuous") || type.starts_with("Daily"));
}

std::optional<Instant> instant_of(const JsonValue& utc, const JsonValue& otherwise) {
  return instant_in(utc.is(Kind::Text) ? utc.text : otherwise.text);
}

SeriesAbout series_of(const JsonRow& feature) {
  const std::string &place = feature[kSublocation].text, &description = feature[kDescription].text;
  const std::string& statistic = feature[kStatistic].text;
  return {.series_id = feature[kId].text,
          .variable = variable_of(feature[kParameter].text),
          .parameter = feature[kParameter].text,
          .statistic = statistic,
          .sensor = place + (place.empty() || description.empty() ? "" : ", ") + description,
          .unit = feature[kUnit].text,
          .primary = feature[kPrimary].text == "Primary",
          .daily = feature[kPeriod].text == "Daily" || (!statistic.empty() && !is_instantaneous(statistic)),
          .begin = instant_of(feature[kBeginUtc], feature[kBegin]),
          .end = instant_of(feature[kEndUtc], feature[kEnd]),
          .longest_gap = period_in(feature[kGap].text)};
}

void set_series(std::vector<SeriesAbout>& all, SeriesAbout series) {
  const auto known = std::ranges::find(all, series.series_id, &SeriesAbout::series_id);
  if (known == all.end())
    all.push_back(std::move(series));
  else
    *known = std::move(series);
}

}  // namespace

Result<std::optional<std::string>> UsgsStations::take(std::string_view bytes, const std::string& where) {
  std::size_t used = 0;
  const auto page = read_feature_page(bytes, where, about_shape(), [&](const JsonRow& feature) {
    const bool is_station = feature[kName].is(Kind::Text);
    const JsonValue& location = feature[feature[kLocation].is(Kind::Text) ? kLocation : kId];
    if ((!is_station && feature[kComputation].is(Kind::Absent)) || !location.is(Kind::Text)) return;
    ++used;
    const std::string key = station_of_location(location.text);
    StationAbout& station = stations_[key];
    station.station = key;
    set_station(station, feature);
    if (is_series(feature)) set_series(station.series, series_of(feature));
  });
  if (!page) return tl::unexpected(page.error());
  if (page->features > 0 && used == 0)
    return tl::unexpected(Failure{where + ": the features are neither stations nor series; the collections read are "
                                          "monitoring-locations, time-series-metadata, combined-metadata",
                                  kExitBadData});
  return page->next;
}

std::vector<StationAbout> UsgsStations::stations() const {
  std::vector<StationAbout> out;
  for (const auto& [key, station] : stations_) out.push_back(station);
  return out;
}

bool is_usgs_stations(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"FeatureCollection\"") &&
         (stands_near_an_end(bytes, "\"monitoring_location_name\"") ||
          stands_near_an_end(bytes, "\"computation_identifier\""));
}

}  // namespace floatwright
