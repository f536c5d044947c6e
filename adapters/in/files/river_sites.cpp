#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/river_sections.hpp"
#include "adapters/in/files/station_name.hpp"

namespace floatwright {
namespace {

std::optional<GeoPoint> read_point(TypedObject& in) {
  const auto latitude = in.plain_number("lat", -90.0, 90.0, in.has("lon") ? Need::Required : Need::Optional);
  const auto longitude = in.plain_number("lon", -180.0, 180.0, in.has("lat") ? Need::Required : Need::Optional);
  if (!latitude || !longitude) return std::nullopt;
  return GeoPoint{*latitude, *longitude};
}

// Drive times are in minutes by access id: the keys are names, so the unit has no place in them.
std::map<std::string, Duration> read_drives(TypedObject& access) {
  std::map<std::string, Duration> drives;
  auto typed = access.object("to_take_out", Need::Optional);
  if (!typed) return drives;
  for (const auto& [id, value] : typed->named_members()) {
    constexpr double kLongestDrive = 24.0 * 60.0;  // min
    const bool is_minutes = value.kind == JsonKind::Number && value.number >= 0.0 && value.number <= kLongestDrive;
    if (is_minutes) {
      drives[id] = minutes(value.number);
    } else {
      typed->tell(id, describe(value), "minutes of driving from 0 to 1440", "Write the minutes as a number.");
    }
  }
  typed->finish();
  return drives;
}

void check_drives(std::vector<TypedObject>& typed, const std::vector<Access>& accesses) {
  std::vector<std::string> ids;
  for (const Access& access : accesses) {
    if (!access.id.empty()) ids.push_back(access.id);
  }
  for (std::size_t i = 0; i < accesses.size(); ++i) {
    for (const auto& [id, time] : accesses[i].to_take_out) {
      if (std::find(ids.begin(), ids.end(), id) != ids.end()) continue;
      auto drives = typed[i].object("to_take_out", Need::Optional);
      if (drives) tell_unknown_word(*drives, id, id, ids);
    }
  }
}

GaugeSite read_gauge(TypedObject& in, PlaceReader& places) {
  GaugeSite gauge;
  gauge.id = in.text("id", Need::Required);
  gauge.name = in.text("name", Need::Optional);
  if (gauge.name.empty()) gauge.name = gauge.id;
  gauge.station = in.text("station", Need::Required);
  if (!gauge.station.empty()) tell_bad_station(in, "station", gauge.station);
  gauge.forecast = in.text("forecast", Need::Optional);
  if (!gauge.forecast.empty()) tell_bad_station(in, "forecast", gauge.forecast);
  gauge.rating_file = in.text("rating", Need::Optional);
  gauge.place = places.at(in, "", Need::Optional);
  gauge.drainage_area = read_area(in, "drainage_area", kDrainageAreas, Need::Optional);
  in.finish();
  return gauge;
}

Access read_access(TypedObject& in, PlaceReader& places) {
  Access access;
  access.id = in.text("id", Need::Required);
  access.name = in.text("name", Need::Optional);
  if (access.name.empty()) access.name = access.id;
  access.kind = in.text("kind", Need::Optional);
  if (const auto place = places.at(in, "", Need::Required)) {
    access.place = *place;
  } else {
    places.miss(access.id);
  }
  access.at = read_point(in);
  access.to_take_out = read_drives(in);
  access.closed = in.truth("closed", false);
  access.trailer = in.truth("trailer", true);
  in.finish();
  return access;
}

}  // namespace

std::vector<GaugeSite> read_gauges(TypedObject& river, PlaceReader& places) {
  std::vector<GaugeSite> gauges;
  for (TypedObject& item : river.objects("gauges", Need::Required)) gauges.push_back(read_gauge(item, places));
  return gauges;
}

std::vector<Access> read_accesses(TypedObject& river, PlaceReader& places) {
  std::vector<TypedObject> typed = river.objects("accesses", Need::Required);
  std::vector<Access> accesses;
  for (TypedObject& item : typed) accesses.push_back(read_access(item, places));
  check_drives(typed, accesses);
  return accesses;
}

}  // namespace floatwright
