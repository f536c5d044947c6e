#include <utility>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/river_sections.hpp"

namespace floatwright {
namespace {

std::optional<HoursOfDay> read_hours(TypedObject& in, Need need) {
  const auto from = read_time_of_day(in, "from_hour", in.has("to_hour") ? Need::Required : need);
  const auto to = read_time_of_day(in, "to_hour", in.has("from_hour") ? Need::Required : need);
  if (!from || !to) return std::nullopt;
  if (*from >= *to) {
    in.tell("to_hour", describe(*in.find("to_hour")), "an hour later on the same day than \"from_hour\"",
            "Write what runs over midnight as two entries.");
  }
  return HoursOfDay{*from, *to};
}

WaveTime read_wave_time(TypedObject& in, PlaceReader& places) {
  WaveTime wave;
  if (const auto span = places.span(in, Need::Required)) {
    wave.from = span->from.place;
    wave.to = span->to.place;
  }
  wave.at_flow = read_flow(in, "at_flow", kRunningFlows, Need::Required).value_or(Discharge{});
  wave.time = read_duration(in, "time", kTripTimes, Need::Required).value_or(Duration{});
  in.finish();
  return wave;
}

Hazard read_hazard(TypedObject& in, PlaceReader& places) {
  Hazard hazard;
  hazard.what = in.text("what", Need::Required);
  hazard.place = places.at(in, "", Need::Required).value_or(RiverPlace{});
  hazard.how = in.text("how", Need::Optional);
  hazard.above_flow = read_flow(in, "above_flow", kFlows, Need::Optional);
  hazard.least_flow = read_flow(in, "least_flow", kFlows, Need::Optional);
  hazard.must_portage = in.truth("must_portage", false);
  hazard.portage_time = read_duration(in, "portage", {minutes(0.0), hours(24.0)}, Need::Optional);
  in.finish();
  return hazard;
}

// A closure holds whichever end is named first: refusing it would be the more dangerous mistake.
void take_ends(Closure& closure, std::optional<NamedPlace> from, std::optional<NamedPlace> to) {
  if (!from || !to) return;
  if (from->place < to->place) std::swap(from, to);
  closure.from = from->place;
  closure.to = to->place;
}

Closure read_closure(TypedObject& in, PlaceReader& places) {
  Closure closure;
  const auto from = places.end(in, "from", Need::Required);
  take_ends(closure, from, places.end(in, "to", Need::Required));
  closure.first_day = read_date(in, "from_date", Need::Optional);
  closure.last_day = read_date(in, "to_date", Need::Optional);
  if (closure.first_day && closure.last_day && *closure.last_day < *closure.first_day) {
    in.tell("to_date", describe(*in.find("to_date")), "a day not before \"from_date\"", "Mend one of the two dates.");
  }
  closure.hours = read_hours(in, Need::Optional);
  closure.why = in.text("why", Need::Optional);
  closure.source = in.text("source", Need::Optional);
  in.finish();
  return closure;
}

Hatch read_hatch(TypedObject& in) {
  Hatch hatch;
  hatch.name = in.text("name", Need::Required);
  hatch.season.from = read_month_day(in, "from_date", Need::Required).value_or(MonthDay{});
  hatch.season.to = read_month_day(in, "to_date", Need::Required).value_or(MonthDay{});
  hatch.hours = read_hours(in, Need::Required).value_or(HoursOfDay{});
  hatch.least_temperature = read_temperature(in, "least_temperature", kWaterTemperatures, Need::Optional);
  in.finish();
  return hatch;
}

}  // namespace

std::vector<WaveTime> read_wave_times(TypedObject& river, PlaceReader& places) {
  std::vector<WaveTime> waves;
  for (TypedObject& item : river.objects("wave_times", Need::Optional)) waves.push_back(read_wave_time(item, places));
  return waves;
}
std::vector<Hazard> read_hazards(TypedObject& river, PlaceReader& places) {
  std::vector<Hazard> hazards;
  for (TypedObject& item : river.objects("hazards", Need::Optional)) hazards.push_back(read_hazard(item, places));
  return hazards;
}
std::vector<Closure> read_closures(TypedObject& river, PlaceReader& places) {
  std::vector<Closure> closures;
  for (TypedObject& item : river.objects("closures", Need::Optional)) closures.push_back(read_closure(item, places));
  return closures;
}
std::vector<Hatch> read_hatches(TypedObject& river) {
  std::vector<Hatch> hatches;
  for (TypedObject& item : river.objects("hatches", Need::Optional)) hatches.push_back(read_hatch(item));
  return hatches;
}

}  // namespace floatwright
