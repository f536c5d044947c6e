#include "adapters/in/gauges/usgs_water_data/field_visits.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <set>
#include <span>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/feature_page.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int {
  kLocation = kFirstOwnSlot,
  kVisit,
  kTime,
  kMonth,
  kDay,
  kTimeOfDay,
  kParameter,
  kReadingType,
  kValue,
  kUnit,
  kRated,
  kCondition,
  kApproval,
  kQualifier,
  kChannel,
  kType,
  kFlow,
  kFlowUnit,
  kWidth,
  kWidthUnit,
  kArea,
  kAreaUnit,
  kSpeed,
  kSpeedUnit,
  kDistance,
  kDistanceUnit,
  kDirection
};

const JsonShape& visits_shape() {
  static const JsonShape kShape = feature_shape({{"/properties/monitoring_location_id", kLocation},
                                                 {"/properties/field_visit_id", kVisit},
                                                 {"/properties/time", kTime},
                                                 {"/properties/month", kMonth},
                                                 {"/properties/day", kDay},
                                                 {"/properties/time_of_day", kTimeOfDay},
                                                 {"/properties/parameter_code", kParameter},
                                                 {"/properties/reading_type", kReadingType},
                                                 {"/properties/value", kValue},
                                                 {"/properties/unit_of_measure", kUnit},
                                                 {"/properties/measurement_rated", kRated},
                                                 {"/properties/control_condition", kCondition},
                                                 {"/properties/approval_status", kApproval},
                                                 {"/properties/qualifier", kQualifier},
                                                 {"/properties/qualifier/*", kQualifier},
                                                 {"/properties/channel_name", kChannel},
                                                 {"/properties/measurement_type", kType},
                                                 {"/properties/channel_flow", kFlow},
                                                 {"/properties/channel_flow_unit", kFlowUnit},
                                                 {"/properties/channel_width", kWidth},
                                                 {"/properties/channel_width_unit", kWidthUnit},
                                                 {"/properties/channel_area", kArea},
                                                 {"/properties/channel_area_unit", kAreaUnit},
                                                 {"/properties/channel_velocity", kSpeed},
                                                 {"/properties/channel_velocity_unit", kSpeedUnit},
                                                 {"/properties/channel_location_distance", kDistance},
                                                 {"/properties/channel_location_distance_unit", kDistanceUnit},
                                                 {"/properties/channel_location_direction", kDirection}});
  return kShape;
}

struct Factor {
  std::string_view unit;
  double si;
};
constexpr std::array kFlows{Factor{"ft^3/s", kCubicMetresPerCubicFoot}, Factor{"m^3/s", 1.0}};
constexpr std::array kLengths{Factor{"ft", kMetresPerFoot}, Factor{"m", 1.0}};
constexpr std::array kAreas{Factor{"ft^2", kMetresPerFoot* kMetresPerFoot}, Factor{"m^2", 1.0}};
constexpr std::array kSpeeds{Factor{"ft/s", kMetresPerFoot}, Factor{"m/s", 1.0}};

// None where it is missing; where it can't be told, a note.
template <class Quantity>
std::optional<Quantity> quantity(const JsonRow& feature, int value, int unit, std::span<const Factor> known,
                                 std::vector<std::string>& notes) {
  const RowValue read = row_value(feature[value], {});
  if (feature[value].is(Kind::Absent) || (!read.number && !read.broken)) return std::nullopt;
  const auto factor = std::ranges::find(known, feature[unit].text, &Factor::unit);
  if (read.number && factor != known.end()) return Quantity::from_si(*read.number * factor->si);
  notes.push_back(
      fmt::format("{}: left out, {}", feature.place(),
                  read.broken ? *read.broken : fmt::format("the unit \"{}\" is not known", printable(feature[unit].text))));
  return std::nullopt;
}

bool tells_ice(std::string_view words) {
  const std::string text = lower_case(words);
  return text.starts_with("ice") || text.find(" ice") != std::string::npos;
}

}  // namespace

Result<std::optional<std::string>> UsgsFieldVisits::take(std::string_view bytes, const std::string& where) {
  std::size_t used = 0;
  const auto page = read_feature_page(bytes, where, visits_shape(), [&](const JsonRow& feature) {
    if (!feature[kVisit].is(Kind::Text) || !feature[kLocation].is(Kind::Text)) return;
    ++used;
    const std::string station = station_of_location(feature[kLocation].text);
    Visit& visit = visits_[{station, feature[kVisit].text}];
    visit.measured.station = station;
    visit.measured.visit = feature[kVisit].text;
    if (feature[kParameter].is(Kind::Absent))
      take_channel(feature, visit);
    else
      take_reading(feature, visit);
  });
  if (!page) return tl::unexpected(page.error());
  if (page->features > 0 && used == 0)
    return tl::unexpected(Failure{where + ": the features are no field visits; the collections read are "
                                          "field-measurements, channel-measurements",
                                  kExitBadData});
  return page->next;
}

// Version 1 writes the date alone and the time of day beside it; a month or a day that is not known is null, and stands
// as 01 in the date.
UsgsFieldVisits::When UsgsFieldVisits::when_of(const JsonRow& feature) {
  if (feature[kMonth].is(Kind::Null) || feature[kDay].is(Kind::Null)) return {};
  const std::string& written = feature[kTime].text;
  const std::string& time_of_day = feature[kTimeOfDay].text;
  const auto whole = instant_in(written);
  if (whole && !feature[kTimeOfDay].is(Kind::Null)) return {.time = whole, .date_only = false};
  if (whole) return {.time = std::chrono::floor<std::chrono::days>(*whole), .date_only = true};
  if (const auto joined = instant_in(written + "T" + time_of_day)) return {.time = joined, .date_only = false};
  const auto date = date_label_in(written);
  return {.time = date, .date_only = date.has_value()};
}

void UsgsFieldVisits::take_reading(const JsonRow& feature, Visit& visit) {
  FieldMeasurement& measured = visit.measured;
  const std::string& type = feature[kReadingType].text;
  std::set<std::string> unknown_codes;
  Marks marks;
  add_marks(feature[kApproval].text, marks, unknown_codes);
  add_marks(feature[kQualifier].text, marks, unknown_codes);
  if (!feature[kCondition].text.empty()) measured.condition = feature[kCondition].text;
  measured.ice = measured.ice || tells_ice(feature[kCondition].text) || marks.contains(Mark::Ice);
  if (feature[kParameter].text == "00065") {
    const auto stage = quantity<Stage>(feature, kValue, kUnit, kLengths, notes_);
    if (stage) visit.stages.push_back({when_of(feature), *stage, type == "MeanGageHeight", marks});
  } else if (feature[kParameter].text == "00060") {
    const auto discharge = quantity<Discharge>(feature, kValue, kUnit, kFlows, notes_);
    if (!discharge) return;
    if (measured.discharge) {
      notes_.push_back(fmt::format("visit {} of {}: discharge measured more than once; the first is kept",
                                   printable(measured.visit), measured.station));
      return;
    }
    measured.discharge = discharge;
    measured.rated = feature[kRated].text;
    measured.marks = marks;
    visit.discharge_when = when_of(feature);
  }
}

void UsgsFieldVisits::take_channel(const JsonRow& feature, Visit& visit) {
  visit.channel_when = when_of(feature);
  visit.measured.ice = visit.measured.ice || tells_ice(feature[kType].text);
  visit.measured.channels.push_back(
      {.name = feature[kChannel].text,
       .type = feature[kType].text,
       .discharge = quantity<Discharge>(feature, kFlow, kFlowUnit, kFlows, notes_),
       .width = quantity<Length>(feature, kWidth, kWidthUnit, kLengths, notes_),
       .area = quantity<Area>(feature, kArea, kAreaUnit, kAreas, notes_),
       .speed = quantity<MeanSpeed>(feature, kSpeed, kSpeedUnit, kSpeeds, notes_),
       .from_gauge = quantity<Length>(feature, kDistance, kDistanceUnit, kLengths, notes_),
       .direction = feature[kDirection].text});
}

// The stage that belongs to a discharge is the mean over its time, else the one read nearest to it.
FieldMeasurement UsgsFieldVisits::finished(const Visit& visit) {
  FieldMeasurement out = visit.measured;
  When when = out.discharge ? visit.discharge_when : visit.channel_when;
  const auto far = [&](const StageRead& stage) {
    return when.time && stage.when.time ? std::chrono::abs(*when.time - *stage.when.time) : Period::max();
  };
  const auto best = std::ranges::min_element(visit.stages, [&](const StageRead& a, const StageRead& b) {
    return a.is_mean != b.is_mean ? a.is_mean : far(a) < far(b);
  });
  if (best != visit.stages.end()) {
    out.stage = best->stage;
    if (!out.discharge) out.marks = best->marks;
    if (!when.time) when = best->when;
  }
  out.time = when.time;
  out.date_only = when.date_only;
  return out;
}

UsgsFieldVisits::Told UsgsFieldVisits::told() const {
  Told out{.visits = {}, .notes = notes_};
  for (const auto& [key, visit] : visits_) out.visits.push_back(finished(visit));
  std::ranges::stable_sort(out.visits, [](const FieldMeasurement& a, const FieldMeasurement& b) {
    return std::tie(a.station, a.time) < std::tie(b.station, b.time);
  });
  return out;
}

bool is_usgs_field_visits(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"FeatureCollection\"") && stands_near_an_end(bytes, "\"field_visit_id\"");
}

}  // namespace floatwright
