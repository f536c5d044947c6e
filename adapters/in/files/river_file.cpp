#include "adapters/in/files/river_file.hpp"

#include <algorithm>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/river_sections.hpp"
#include "adapters/in/files/time_zone.hpp"

namespace floatwright {
namespace {

// A closed list, since limits hang on it: "cuthroat" must not loosen one.
std::vector<std::string> read_fish(TypedObject& in) {
  static const std::vector<std::string> kFish{"rainbow",   "brown",  "brook", "cutthroat", "bull_trout", "lake_trout",
                                              "steelhead", "salmon", "char",  "grayling",  "whitefish",  "bass",
                                              "pike",      "walleye", "carp", "other"};
  std::vector<std::string> fish = in.texts("fish", Need::Optional);
  for (const std::string& name : fish) {
    if (std::ranges::find(kFish, name) == kFish.end()) tell_unknown_word(in, "fish", name, kFish);
  }
  return fish;
}

BoatLimits read_boat_limits(TypedObject& in) {
  BoatLimits limits;
  auto typed = in.object("boat_limits", Need::Optional);
  if (!typed) return limits;
  limits.least_flow = read_flow(*typed, "least_flow", kFlows, Need::Optional);
  limits.most_flow = read_flow(*typed, "most_flow", kFlows, Need::Optional);
  if (limits.least_flow && limits.most_flow && *limits.least_flow >= *limits.most_flow) {
    typed->tell("", "a least flow that is not under the most", "least under most", "Mend one of the two.");
  }
  typed->finish();
  return limits;
}

std::optional<GeoPoint> read_weather_place(TypedObject& in) {
  auto place = in.object("weather_at", Need::Optional);
  if (!place) return std::nullopt;
  const auto latitude = place->plain_number("lat", -90.0, 90.0, Need::Required);
  const auto longitude = place->plain_number("lon", -180.0, 180.0, Need::Required);
  place->finish();
  if (!latitude || !longitude) return std::nullopt;
  return GeoPoint{*latitude, *longitude};
}

void read_head(TypedObject& in, River& river) {
  river.name = in.text("river", Need::Required);
  river.time_zone = in.text("time_zone", Need::Required);
  if (!river.time_zone.empty()) tell_unknown_zone(in, "time_zone", river.time_zone);
  static constexpr WordTable<bool, 2> kZeros{{{false, "mouth"}, {true, "source"}}};
  river.miles_from_source = meaning_of(in, "mile_zero", in.text("mile_zero", Need::Optional), kZeros).value_or(false);
  river.altitude = read_length(in, "altitude", kAltitudes, Need::Optional);
  river.fish = read_fish(in);
  river.snow_fed = in.truth("snow_fed", false);
  river.rules_checked_on = read_date(in, "rules_checked_on", Need::Optional);
  river.area_exponent = in.plain_number("area_exponent", 0.3, 1.5, Need::Optional).value_or(1.0);
  river.boat_limits = read_boat_limits(in);
  river.weather_at = read_weather_place(in);
}

}  // namespace

ReadRiver read_river(const LocatedJson& root, FileReading& reading) {
  ReadRiver read;
  auto in = versioned_root(root, reading);
  if (!in) return read;
  River& river = read.river;
  read_head(*in, river);
  PlaceReader places(river.miles_from_source);
  river.accesses = read_accesses(*in, places);
  places.know(river.accesses);
  river.gauges = read_gauges(*in, places);
  river.notes = read_stretch_notes(*in, places);
  river.reaches = read_reaches(*in, places);
  river.dams = read_dams(*in, places);
  river.tributaries = read_tributaries(*in, places);
  river.side_channels = read_side_channels(*in, places);
  river.diversions = read_diversions(*in, places);
  river.wave_times = read_wave_times(*in, places);
  river.hazards = read_hazards(*in, places);
  river.closures = read_closures(*in, places);
  river.spots = read_spots(*in, places);
  river.hatches = read_hatches(*in);
  river.lakes = read_lakes(*in, places);
  in->finish();
  river.kilometres = places.mostly_kilometres();
  read.all_places_read = places.all_read();
  return read;
}

}  // namespace floatwright
