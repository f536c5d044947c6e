#include "adapters/in/calendar/zone_of_state.hpp"

#include <date/tz.h>

#include <map>
#include <stdexcept>
#include <vector>

namespace floatwright {
namespace {

// The zone of most of a state first. A zone for a few counties whose clock now is that of another here is left out.
// Held against the zone table of the system by the tests.
const std::map<std::string, std::vector<const char*>>& zones_of_states() {
  static constexpr const char *kEastern = "America/New_York", *kCentral = "America/Chicago",
                              *kMountain = "America/Denver", *kPacific = "America/Los_Angeles",
                              *kBoise = "America/Boise";
  static const std::map<std::string, std::vector<const char*>> kZones{
      {"Alabama", {kCentral}},
      {"Alaska", {"America/Anchorage", "America/Adak"}},
      {"American Samoa", {"Pacific/Pago_Pago"}},
      {"Arizona", {"America/Phoenix", kMountain}},
      {"Arkansas", {kCentral}},
      {"California", {kPacific}},
      {"Colorado", {kMountain}},
      {"Connecticut", {kEastern}},
      {"Delaware", {kEastern}},
      {"District of Columbia", {kEastern}},
      {"Florida", {kEastern, kCentral}},
      {"Georgia", {kEastern}},
      {"Guam", {"Pacific/Guam"}},
      {"Hawaii", {"Pacific/Honolulu"}},
      {"Idaho", {kBoise, kPacific}},
      {"Illinois", {kCentral}},
      {"Indiana", {"America/Indiana/Indianapolis", kCentral}},
      {"Iowa", {kCentral}},
      {"Kansas", {kCentral, kMountain}},
      {"Kentucky", {kEastern, kCentral}},
      {"Louisiana", {kCentral}},
      {"Maine", {kEastern}},
      {"Maryland", {kEastern}},
      {"Massachusetts", {kEastern}},
      {"Michigan", {"America/Detroit", "America/Menominee"}},
      {"Minnesota", {kCentral}},
      {"Mississippi", {kCentral}},
      {"Missouri", {kCentral}},
      {"Montana", {kMountain}},
      {"Nebraska", {kCentral, kMountain}},
      {"Nevada", {kPacific, kMountain}},
      {"New Hampshire", {kEastern}},
      {"New Jersey", {kEastern}},
      {"New Mexico", {kMountain}},
      {"New York", {kEastern}},
      {"North Carolina", {kEastern}},
      {"North Dakota", {kCentral, kMountain}},
      {"Northern Mariana Islands", {"Pacific/Guam"}},
      {"Ohio", {kEastern}},
      {"Oklahoma", {kCentral}},
      {"Oregon", {kPacific, kBoise}},
      {"Pennsylvania", {kEastern}},
      {"Puerto Rico", {"America/Puerto_Rico"}},
      {"Rhode Island", {kEastern}},
      {"South Carolina", {kEastern}},
      {"South Dakota", {kCentral, kMountain}},
      {"Tennessee", {kCentral, kEastern}},
      {"Texas", {kCentral, kMountain}},
      {"Utah", {kMountain}},
      {"Vermont", {kEastern}},
      {"Virgin Islands", {"America/Puerto_Rico"}},
      {"Virginia", {kEastern}},
      {"Washington", {kPacific}},
      {"West Virginia", {kEastern}},
      {"Wisconsin", {kCentral}},
      {"Wyoming", {kMountain}}};
  return kZones;
}

// As its clock has been for years; of this one January tells standard time and July daylight saving.
struct Clock {
  std::string abbreviation;
  bool saves_daylight = false;
};

std::optional<Clock> clock_of(const char* zone) {
  try {
    const auto* found = date::locate_zone(zone);
    const date::sys_days january = date::year{2026} / 1 / 15, july = date::year{2026} / 7 / 15;
    return Clock{found->get_info(january).abbrev, found->get_info(july).save != std::chrono::minutes{0}};
  } catch (const std::runtime_error&) {
    return std::nullopt;  // a machine without its zone files; the loader says what to install
  }
}

}  // namespace

std::optional<LikelyZone> zone_of_state(const std::string& state, const std::string& abbreviation,
                                        std::optional<bool> daylight_saving) {
  const auto row = zones_of_states().find(state);
  if (row == zones_of_states().end()) return std::nullopt;
  std::optional<LikelyZone> likely;
  for (const char* zone : row->second) {
    const auto clock = clock_of(zone);
    if (!clock || clock->abbreviation != abbreviation) continue;
    if (!likely || clock->saves_daylight == daylight_saving) likely = LikelyZone{zone, true};
  }
  if (likely) return likely;
  return row->second.size() == 1 ? std::optional{LikelyZone{row->second.front(), false}} : std::nullopt;
}

}  // namespace floatwright
