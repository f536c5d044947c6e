#include "adapters/in/files/river_channel.hpp"

#include <algorithm>

#include "adapters/in/files/river_ranges.hpp"

namespace floatwright {
namespace {

constexpr Range<Length> kAcross{metres(-20000.0), metres(20000.0)};
constexpr Range<Length> kHeights{metres(-500.0), metres(6000.0)};   // a height over the sea, or a depth with a minus
constexpr double kSmoothest = 0.008, kRoughest = 0.5;               // Manning's n, s/m^(1/3)
constexpr std::string_view kMeasured[] = {"at_flow", "width", "mean_depth", "mean_speed"};

// Nothing where none of the four was typed and none is needed.
std::optional<ChannelMeasurement> read_measurement(TypedObject& in, Need need) {
  constexpr Range<MeanSpeed> kMovingSpeeds{mean_metres_per_second(0.01), kMeanSpeeds.most};
  const auto flow = read_flow(in, "at_flow", kRunningFlows, need);
  const auto width = read_length(in, "width", kWidths, need);
  const auto depth = read_length(in, "mean_depth", kWaterDepths, need);
  const auto speed = read_mean_speed(in, "mean_speed", kMovingSpeeds, need);
  if (!flow || !width || !depth || !speed) return std::nullopt;
  return ChannelMeasurement{*flow, *width, *depth, *speed};
}

bool names_a_measurement(const TypedObject& in) {
  return std::ranges::any_of(kMeasured, [&](std::string_view stem) { return in.has_any_spelling(stem); });
}

SurveyedSection read_section(TypedObject& in) {
  SurveyedSection section;
  section.slope = in.plain_number("slope", 0.0, kSteepestSlope, Need::Optional);
  section.roughness = in.plain_number("roughness", kSmoothest, kRoughest, Need::Optional);
  for (TypedObject& point : in.objects("points", Need::Required)) {
    const auto across = read_length(point, "across", kAcross, Need::Required);
    const auto height = read_length(point, "height", kHeights, Need::Required);
    point.finish();
    if (across && height) section.points.push_back({*across, *height});
  }
  in.finish();
  return section;
}

}  // namespace

void read_channel(TypedObject& reach_typed, NamedReach& reach) {
  auto in = reach_typed.object("channel", Need::Optional);
  if (!in) return;
  const bool lists = in->has("measurements") || in->has("sections");
  const auto alone = read_measurement(*in, lists ? Need::Optional : Need::Required);
  if (lists && names_a_measurement(*in))
    in->tell("", "a measurement beside \"measurements\" or \"sections\"", "it as one of \"measurements\"",
             "Move it into the list.");
  if (alone && !lists) reach.channel.push_back(*alone);
  for (TypedObject& item : in->objects("measurements", Need::Optional)) {
    if (const auto measured = read_measurement(item, Need::Required)) reach.channel.push_back(*measured);
    item.finish();
  }
  for (TypedObject& item : in->objects("sections", Need::Optional)) reach.sections.push_back(read_section(item));
  in->finish();
}

}  // namespace floatwright
