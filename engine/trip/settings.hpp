#pragma once
// settings.json as values: who, hours, limits (only stricter than the defaults), which gauges' payloads, whom to call.
#include <optional>
#include <string>
#include <vector>

#include "engine/choice/angler.hpp"

namespace floatwright {

enum class UnitSystem { Us, Metric };

struct Settings {
  std::string who, phone;
  UnitSystem units = UnitSystem::Us;
  Duration day_turns_at = hours(10.0);      // local; before it the day planned is today
  Preferences preferences;
  Duration earliest_launch = hours(7.0), latest_off = hours(19.0);  // local time of day
  Duration stops_per_trip = hours(1.0), lunch = minutes(30.0);
  std::optional<Length> least_stretch, most_stretch;
  std::optional<std::string> from, to;      // access ids: only this stretch
  std::optional<Duration> launch;           // local; asked for, in place of the earliest
  std::optional<Temperature> heat_caution, heat_stop;  // only lower than the defaults
  std::optional<double> wading_limit_m2_s;  // depth x speed; only lower
  std::optional<Length> visibility;         // typed this morning
  std::string emergency;                    // a sentence for the sheet
  std::string ashore_contact, ashore_phone;
  std::string boat;
  std::string boat_of_several;              // its name on a day of several boats; empty: the only one
};

}  // namespace floatwright
