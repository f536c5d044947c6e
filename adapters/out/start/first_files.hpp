#pragma once
// A first configuration, as the text of its three files: what a service said filled in, usual values for the rest, and
// null behind a comment TYPE for what only a person knows. So `check` lists what is still to be typed, and nothing is
// ever planned from an invented depth.
#include <filesystem>
#include <optional>
#include <string>

#include "engine/readings/gauge_record.hpp"
#include "engine/readings/station_about.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

struct FirstValues {
  StationAbout about;                 // its key at least
  bool described = false;             // the service was asked what the station is
  std::string time_zone;              // IANA; empty: to be typed
  std::string zone_from;              // behind it, where it comes from: "from Montana and MST"
  std::optional<NewestReading> flow;  // the newest reading, where it is a flow that water can have
  UnitSystem units = UnitSystem::Us;
  std::filesystem::path payloads;  // absolute; where recorded answers stand in place of the network; else empty
};

[[nodiscard]] std::string first_river(const FirstValues& values);
[[nodiscard]] std::string first_tackle();
[[nodiscard]] std::string first_settings(const FirstValues& values);

// "1850 cfs on 2027-05-13 at 19:45 (provisional)", on the river's clock where it is known.
[[nodiscard]] std::string say_first_flow(const FirstValues& values);

// A river's name out of a gauge's: "Lantern River" of "LANTERN RIVER BELOW HERON DAM, MT".
[[nodiscard]] std::string river_in(const std::string& gauge_name);

}  // namespace floatwright
