#include "adapters/cli/first_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "adapters/in/calendar/zone_of_state.hpp"
#include "engine/readings/usable.hpp"

namespace floatwright {
namespace {

// The services of one country, whose clock goes for all of it but islands far off.
void set_zone(FirstValues& values) {
  static const std::map<std::string, const char*> kCountries{
      {"ea", "Europe/London"}, {"hubeau", "Europe/Paris"}, {"nve", "Europe/Oslo"}, {"foen", "Europe/Zurich"}};
  const StationAbout& about = values.about;
  if (const auto country = kCountries.find(prefix_of(about.station)); country != kCountries.end()) {
    values.time_zone = country->second;
    values.zone_from = "from the service's country; check it";
  } else if (const auto zone = zone_of_state(about.state, about.zone, about.daylight_saving)) {
    values.time_zone = zone->name;
    values.zone_from = zone->by_both ? fmt::format("from {} and {}", about.state, about.zone)
                                     : fmt::format("from {}, though the service's \"{}\" is not its; check it",
                                                   about.state, about.zone);
  }
}

// A flow at which a depth can have been seen.
bool is_running(const NewestReading& flow, Instant now) {
  return flow.si && *flow.si > 0.0 && !why_not_usable({flow.time, *flow.si, flow.marks}, Variable::Flow, now);
}

}  // namespace

FirstValues first_values(const FirstLook& look, Instant now, const std::string& payload) {
  FirstValues out{.about = look.about,
                  .described = look.described,
                  .time_zone = {},
                  .zone_from = {},
                  .flow = {},
                  .units = {},
                  .payloads = {}};
  set_zone(out);
  static const std::array<std::string, 3> kInFeet{"usgs", "nwps", "csv"};
  const bool feet = std::ranges::find(kInFeet, prefix_of(look.about.station)) != kInFeet.end();
  out.units = feet ? UnitSystem::Us : UnitSystem::Metric;
  if (!payload.empty()) out.payloads = std::filesystem::absolute(payload).lexically_normal();
  const GaugeRecord record = gauge_record("gauge", look.about.station, look.series, "", now);
  for (const NewestReading& newest : record.newest)
    if (newest.variable == Variable::Flow && is_running(newest, now)) out.flow = newest;
  return out;
}

}  // namespace floatwright
