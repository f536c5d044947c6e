#include "adapters/in/files/settings_file.hpp"

#include <fmt/format.h>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/csv_gauges_object.hpp"
#include "adapters/in/files/mail_object.hpp"
#include "adapters/in/files/people_and_methods.hpp"
#include "adapters/in/files/quantities.hpp"
#include "adapters/in/files/services_object.hpp"
#include "engine/river/names.hpp"
#include "engine/tackle/names.hpp"

namespace floatwright {
namespace {

// The loosest that may be typed are the defaults for trout; for more tender fish the trip holds lower ones.
constexpr Range<Temperature> kHeatStops{fahrenheit(40.0), fahrenheit(70.0)};
constexpr Range<Temperature> kHeatCautions{fahrenheit(40.0), fahrenheit(67.0)};
constexpr double kLargestWadingProduct = 6.5 * kMetresPerFoot * kMetresPerFoot;  // m2/s, 6.5 ft2/s
constexpr Range<Length> kStretches{kilometres(0.1), kilometres(300.0)};
constexpr Range<Duration> kPauses{minutes(0.0), hours(12.0)};
constexpr Range<Length> kVisibilities{metres(0.0), metres(30.0)};

void read_who(TypedObject& in, Settings& settings) {
  auto who = in.object("who", Need::Optional);
  if (!who) return;
  settings.who = who->text("name", Need::Optional);
  settings.phone = who->text("phone", Need::Optional);
  who->finish();
}

void read_platforms(TypedObject& in, Preferences& preferences) {
  const std::vector<std::string> words = in.texts("platforms", Need::Optional);
  if (!in.has("platforms")) return;
  preferences.platforms.clear();
  for (const std::string& word : words) {
    if (const auto platform = meaning_of(in, "platforms", word, kPlatformWords))
      preferences.platforms.push_back(*platform);
  }
  if (words.empty()) in.tell("platforms", "no platform", "at least one", "Leave the key out for all that a boat has.");
}

void read_hours(TypedObject& in, Settings& settings) {
  auto hours = in.object("hours", Need::Optional);
  if (!hours) return;
  settings.earliest_launch =
      read_time_of_day(*hours, "earliest_launch", Need::Optional).value_or(settings.earliest_launch);
  settings.latest_off = read_time_of_day(*hours, "latest_off", Need::Optional).value_or(settings.latest_off);
  hours->finish();
  if (settings.earliest_launch >= settings.latest_off) {
    hours->tell("", "an earliest launch that is not before the latest hour off the water", "launch before off",
                "Mend one of the two.");
  }
}

void read_stretch(TypedObject& in, Settings& settings) {
  auto stretch = in.object("stretch", Need::Optional);
  if (!stretch) return;
  settings.least_stretch = read_distance(*stretch, "least", kStretches, Need::Optional);
  settings.most_stretch = read_distance(*stretch, "most", kStretches, Need::Optional);
  const std::string from = stretch->text("from", Need::Optional), to = stretch->text("to", Need::Optional);
  if (!from.empty()) settings.from = from;
  if (!to.empty()) settings.to = to;
  stretch->finish();
  if (settings.least_stretch && settings.most_stretch && *settings.least_stretch > *settings.most_stretch) {
    stretch->tell("", "a least stretch longer than the most", "least up to most", "Mend one of the two.");
  }
}

void read_limits(TypedObject& in, Settings& settings) {
  auto limits = in.object("limits", Need::Optional);
  if (!limits) return;
  settings.heat_caution = read_temperature(*limits, "heat_caution", kHeatCautions, Need::Optional);
  settings.heat_stop = read_temperature(*limits, "heat_stop", kHeatStops, Need::Optional);
  settings.wading_limit_m2_s =
      read_depth_times_speed_m2_s(*limits, "wading_depth_times_speed", {0.0, kLargestWadingProduct}, Need::Optional);
  limits->finish();
  if (settings.heat_caution && settings.heat_stop && *settings.heat_caution > *settings.heat_stop) {
    limits->tell("", "a heat caution above the heat stop", "caution up to stop", "Mend one of the two.");
  }
}

void read_ashore(TypedObject& in, Settings& settings) {
  settings.emergency = in.text("emergency", Need::Optional);
  auto ashore = in.object("ashore", Need::Optional);
  if (!ashore) return;
  settings.ashore_contact = ashore->text("contact", Need::Optional);
  settings.ashore_phone = ashore->text("phone", Need::Optional);
  ashore->finish();
}

std::optional<std::filesystem::path> read_path(TypedObject& in, std::string_view key) {
  const std::string typed = in.text(key, Need::Optional);
  if (typed.empty()) return std::nullopt;
  return std::filesystem::path(typed);
}

ReadingsPlace read_readings_place(TypedObject& in) {
  ReadingsPlace place;
  place.payloads = read_path(in, "readings");
  place.archive = read_path(in, "archive");
  place.contact = in.text("contact", Need::Optional);
  place.api_key_file = read_path(in, "api_key_file");
  place.csv_gauges = read_csv_gauges(in);
  place.services = read_services(in);
  return place;
}

}  // namespace

ReadSettings read_settings(const LocatedJson& root, FileReading& reading) {
  static constexpr WordTable<UnitSystem, 2> kUnits{{{UnitSystem::Us, "us"}, {UnitSystem::Metric, "metric"}}};
  ReadSettings read;
  auto in = versioned_root(root, reading);
  if (!in) return read;
  Settings& settings = read.settings;
  read_who(*in, settings);
  settings.units = meaning_of(*in, "units", in->text("units", Need::Optional), kUnits).value_or(UnitSystem::Us);
  settings.day_turns_at = read_time_of_day(*in, "day_turns_at", Need::Optional).value_or(settings.day_turns_at);
  settings.boat = in->text("boat", Need::Optional);
  settings.preferences.anglers = read_people(*in, "people", Need::Required);
  settings.preferences.methods = read_methods(*in, Need::Required);
  read_platforms(*in, settings.preferences);
  settings.preferences.rods_aboard = in->whole_number("rods_aboard", 1, 12, Need::Optional).value_or(3);
  read_hours(*in, settings);
  settings.stops_per_trip = read_duration(*in, "stops", kPauses, Need::Optional).value_or(settings.stops_per_trip);
  settings.lunch = read_duration(*in, "lunch", kPauses, Need::Optional).value_or(settings.lunch);
  read_stretch(*in, settings);
  read_limits(*in, settings);
  settings.visibility = read_length(*in, "visibility", kVisibilities, Need::Optional);
  read_ashore(*in, settings);
  read.readings = read_readings_place(*in);
  read.mail = read_mail(*in);
  in->finish();
  return read;
}

}  // namespace floatwright
