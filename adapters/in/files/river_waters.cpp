#include <fmt/format.h>

#include "adapters/in/files/calendar_text.hpp"
#include "adapters/in/files/river_channel.hpp"
#include "adapters/in/files/river_ranges.hpp"
#include "adapters/in/files/river_sections.hpp"
#include "engine/river/names.hpp"
#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

Bed read_bed(TypedObject& in) {
  return meaning_of(in, "bed", in.text("bed", Need::Optional), kBedWords).value_or(Bed::Unknown);
}

// A person sees the surface; a speed measured as a mean over the depth is turned into it by the profile over
// such a bed.
std::optional<SurfaceSpeed> read_speed(TypedObject& in, const std::optional<Length>& depth, Bed bed) {
  const auto surface = read_surface_speed(in, "surface_speed", kSurfaceSpeeds, Need::Optional);
  const auto mean = read_mean_speed(in, "mean_speed", kMeanSpeeds, Need::Optional);
  if (in.has_any_spelling("surface_speed") && in.has_any_spelling("mean_speed")) {
    in.tell("", "a surface speed and a mean speed at once", "one of them", "Keep the one that was seen or measured.");
    return std::nullopt;
  }
  if (surface) return surface;
  if (mean && depth) return surface_speed(*mean, bed_profile(bed, *depth), *depth);
  return std::nullopt;
}

void tell_what_is_missing(TypedObject& in, const std::optional<Discharge>& at_flow) {
  if (!in.has_any_spelling("depth")) {
    in.tell("", "no depth", "a depth", "Add \"depth_ft\" or \"depth_m\".");
  }
  if (!in.has_any_spelling("surface_speed") && !in.has_any_spelling("mean_speed")) {
    in.tell("", "no speed", "the speed that goes with the depth",
            "Add \"surface_speed_ft_s\" (what is seen), or \"mean_speed_ft_s\" (mean over the depth).");
  }
  if (!at_flow && !in.has_any_spelling("at_flow")) {
    in.tell("", "no flow at which this was seen", "the flow of that day", "Add \"at_flow_cfs\" or \"at_flow_m3_s\".");
  }
}

// Nothing where no depth and no speed were typed and none is needed.
std::optional<WaterNote> read_note(TypedObject& in, const SeenThen& around, Need need) {
  const auto own_flow = read_flow(in, "at_flow", kRunningFlows, Need::Optional);
  const auto at_flow = own_flow ? own_flow : around.at_flow;
  const auto depth = read_length(in, "depth", kWaterDepths, Need::Optional);
  const auto speed = read_speed(in, depth, around.bed);
  const auto source = meaning_of(in, "source", in.text("source", Need::Optional), kDepthSourceWords);
  const auto seen_on = read_date(in, "seen_on", Need::Optional);
  const bool anything =
      in.has_any_spelling("depth") || in.has_any_spelling("surface_speed") || in.has_any_spelling("mean_speed");
  if (!anything && need == Need::Optional) return std::nullopt;
  tell_what_is_missing(in, at_flow);
  if (!at_flow || !depth || !speed) return std::nullopt;
  return WaterNote{*at_flow, *depth, *speed, source.value_or(DepthSource::Noted), seen_on ? seen_on : around.seen_on};
}

Water read_water(TypedObject& in, const SeenThen& around) {
  Water water;
  water.type = meaning_of(in, "water", in.text("water", Need::Required), kWaterWords).value_or(WaterType::Run);
  water.fishing_time = in.plain_number("fishing_time", 0.0, 1.0, Need::Required).value_or(0.0);
  if (const auto note = read_note(in, around, Need::Optional)) water.notes.push_back(*note);
  for (TypedObject& item : in.objects("notes", Need::Optional)) {
    const auto note = read_note(item, around, Need::Required);
    item.finish();
    if (note) water.notes.push_back(*note);
  }
  in.finish();
  return water;
}

StretchNote read_stretch_note(TypedObject& in, PlaceReader& places) {
  StretchNote note;
  if (const auto span = places.span(in, Need::Required)) {
    note.from = span->from.place;
    note.to = span->to.place;
    note.from_name = span->from.name;
    note.to_name = span->to.name;
  }
  const auto at_flow = read_flow(in, "at_flow", kRunningFlows, Need::Required);
  note.at_flow = at_flow.value_or(Discharge{});
  note.float_time = read_duration(in, "float_time", kTripTimes, Need::Optional);
  const auto seen_on = read_date(in, "seen_on", Need::Optional);
  note.waters = read_waters(in, {.at_flow = note.at_flow, .seen_on = seen_on});
  in.finish();
  return note;
}

NamedReach read_reach(TypedObject& in, PlaceReader& places) {
  NamedReach reach;
  reach.id = in.text("id", Need::Required);
  reach.name = in.text("name", Need::Optional);
  if (reach.name.empty()) reach.name = reach.id;
  if (const auto span = places.span(in, Need::Required)) {
    reach.from = span->from.place;
    reach.to = span->to.place;
  }
  reach.bed = read_bed(in);
  reach.slope = in.plain_number("slope", 0.0, kSteepestSlope, Need::Optional);
  read_channel(in, reach);
  reach.waters = read_waters(in, {.at_flow = {}, .seen_on = {}, .bed = reach.bed});
  reach.in_side_channel = in.text("in_side_channel", Need::Optional);
  in.finish();
  return reach;
}

Spot read_spot(TypedObject& in, PlaceReader& places) {
  Spot spot;
  spot.id = in.text("id", Need::Required);
  spot.name = in.text("name", Need::Optional);
  if (spot.name.empty()) spot.name = spot.id;
  spot.place = places.at(in, "", Need::Required).value_or(RiverPlace{});
  spot.platform =
      meaning_of(in, "platform", in.text("platform", Need::Optional), kPlatformWords).value_or(Platform::Wading);
  spot.bed = read_bed(in);
  spot.waters = read_waters(in, {.at_flow = {}, .seen_on = {}, .bed = spot.bed});
  in.finish();
  return spot;
}

}  // namespace

std::vector<Water> read_waters(TypedObject& in, const SeenThen& around) {
  constexpr double kRounding = 0.005;  // thirds typed as 0.33 or 0.34
  std::vector<Water> waters;
  double sum = 0.0;
  for (TypedObject& item : in.objects("waters", Need::Optional)) {
    waters.push_back(read_water(item, around));
    sum += waters.back().fishing_time;
  }
  if (sum > 1.0 + kRounding * static_cast<double>(waters.size())) {
    in.tell("waters", fmt::format("fishing times that add up to {:.3g}", sum), "shares that add up to 1 or less",
            "Make the shares smaller.");
  }
  return waters;
}

std::vector<StretchNote> read_stretch_notes(TypedObject& river, PlaceReader& places) {
  std::vector<StretchNote> notes;
  for (TypedObject& item : river.objects("notes", Need::Optional)) notes.push_back(read_stretch_note(item, places));
  return notes;
}
std::vector<NamedReach> read_reaches(TypedObject& river, PlaceReader& places) {
  std::vector<NamedReach> reaches;
  for (TypedObject& item : river.objects("reaches", Need::Optional)) reaches.push_back(read_reach(item, places));
  return reaches;
}
std::vector<Spot> read_spots(TypedObject& river, PlaceReader& places) {
  std::vector<Spot> spots;
  for (TypedObject& item : river.objects("spots", Need::Optional)) spots.push_back(read_spot(item, places));
  return spots;
}

}  // namespace floatwright
