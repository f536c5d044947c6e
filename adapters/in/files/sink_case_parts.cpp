#include "adapters/in/files/sink_case_parts.hpp"

#include <cmath>

#include "adapters/in/files/quantities.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {
namespace {

// What can be solved at all, wide enough for any line and for published cables; ours, no source.
constexpr Range<Length> kDepths{metres(0.05), metres(10000.0)};
constexpr double kFastest = 10.0;  // m/s
constexpr Range<Length> kRoughness{metres(1e-5), metres(10.0)};
constexpr Range<Length> kPartLengths{metres(0.001), metres(10000.0)};
constexpr Range<Length> kDiameters{millimetres(0.01), millimetres(1000.0)};
constexpr Range<Density> kDensities{kilograms_per_cubic_metre(10.0), kilograms_per_cubic_metre(25000.0)};
constexpr Range<Speed> kRates{metres_per_second(-2.0), metres_per_second(2.0)};
constexpr Range<Force> kFlyWeights{newtons(-1e6), newtons(1e6)};
constexpr Range<Area> kDragAreas{square_metres(0.0), square_metres(1000.0)};
constexpr double kTowedShare = 0.25;  // of the broadside drag area, as of a fly that is named

constexpr WordTable<PartKind, 3> kPartWords{
    {{PartKind::Leader, "leader"}, {PartKind::Sinking, "sinking"}, {PartKind::Floating, "floating"}}};

Profile read_profile(TypedObject& water, Length depth) {
  Profile profile;
  auto in = water.object("profile", Need::Optional);
  if (!in) return profile;
  const auto power = in->plain_number("power", 0.01, 1.0, Need::Optional);
  const auto roughness = read_length(*in, "log_ks", kRoughness, Need::Optional);
  const bool uniform = in->truth("uniform", false);
  if (int{in->has("power")} + int{in->has_any_spelling("log_ks")} + int{in->has("uniform")} != 1) {
    in->tell("", "a profile with none or several of its laws", "one of \"power\", \"log_ks_m\" and \"uniform\"",
             "Write { \"power\": 0.1667 }, { \"log_ks_m\": 0.05 } or { \"uniform\": true }.");
  } else if (in->has("uniform") && !uniform) {
    in->tell("uniform", "false", "true", "Write true, or take another law.");
  } else if (roughness && depth > Length{} && *roughness >= depth) {
    in->tell("", "a bed as rough as the water is deep", "a roughness under the depth",
             "Write the height of what the bed is made of: 0.05 m for cobble.");
  }
  in->finish();
  if (power) profile.exponent = *power;
  if (roughness) profile = {Profile::Law::Log, profile.exponent, *roughness};
  if (uniform) profile.law = Profile::Law::Uniform;
  return profile;
}

SurfaceSpeed read_speed(TypedObject& in, const CaseWater& water) {
  const auto surface =
      read_surface_speed(in, "surface_speed", {SurfaceSpeed{}, surface_metres_per_second(kFastest)}, Need::Optional);
  const auto mean = read_mean_speed(in, "mean_speed", {MeanSpeed{}, mean_metres_per_second(kFastest)}, Need::Optional);
  const bool has_surface = in.has_any_spelling("surface_speed"), has_mean = in.has_any_spelling("mean_speed");
  if (has_surface == has_mean)
    in.tell("", has_mean ? "a mean speed and a surface speed at once" : "no speed",
            "one of \"mean_speed_m_s\" and \"surface_speed_m_s\"",
            has_mean ? "Keep one: the profile gives the other." : "Add \"mean_speed_m_s\" or \"surface_speed_m_s\".");
  if (mean && water.depth > Length{}) return surface_speed(*mean, water.profile, water.depth);
  return surface.value_or(SurfaceSpeed{});
}

// "sink_rate_m_s": one rate, or those of butt and tip.
void read_rates(TypedObject& in, LinePart& part) {
  bool is_list = false;
  for (const char* key : {"sink_rate_m_s", "sink_rate_in_s", "sink_rate_ft_s"}) {
    const LocatedJson* value = in.find(key);
    is_list = is_list || (value != nullptr && value->kind == JsonKind::List);
  }
  if (!is_list) {
    part.sink_rate_butt = part.sink_rate_end = read_sink_rate(in, "sink_rate", kRates, Need::Optional);
    return;
  }
  const auto rates = read_speeds(in, "sink_rate", kRates);
  if (rates.size() != 2) {
    in.tell("", "a sink rate that is not two numbers", "the rates of butt and tip",
            "Write [ 0.15, 0.15 ], or one number.");
    return;
  }
  part.sink_rate_butt = rates[0];
  part.sink_rate_end = rates[1];
}

LinePart read_part(TypedObject& in) {
  LinePart part;
  part.kind = meaning_of(in, "kind", in.text("kind", Need::Required), kPartWords).value_or(PartKind::Leader);
  part.length = read_length(in, "length", kPartLengths, Need::Required).value_or(Length{});
  part.diameter = read_diameter(in, "diameter", kDiameters, Need::Required).value_or(Length{});
  part.density = read_density(in, "density", kDensities, Need::Optional).value_or(Density{});
  read_rates(in, part);
  const bool has_density = in.has_any_spelling("density"), has_rate = in.has_any_spelling("sink_rate");
  if (has_density == has_rate)
    in.tell(
        "", has_rate ? "a density and a sink rate at once" : "neither a density nor a sink rate",
        "one of \"density_kg_m3\" and \"sink_rate_m_s\"",
        has_rate ? "Keep one: with the diameter it gives the other." : "Add \"density_kg_m3\" or \"sink_rate_m_s\".");
  in.finish();
  return part;
}

}  // namespace

CaseWater read_case_water(TypedObject& in) {
  CaseWater water;
  water.depth = read_length(in, "depth", kDepths, Need::Required).value_or(Length{});
  water.profile = read_profile(in, water.depth);
  water.surface_speed = read_speed(in, water);
  water.temperature =
      read_temperature(in, "temperature", {celsius(0.0), celsius(40.0)}, Need::Optional).value_or(celsius(10.0));
  in.finish();
  return water;
}

std::vector<LinePart> read_case_parts(TypedObject& in) {
  constexpr std::size_t kMostParts = 100;
  std::vector<LinePart> parts;
  auto items = in.objects("parts", Need::Required);
  for (TypedObject& item : items) parts.push_back(read_part(item));
  if (in.has("parts") && parts.empty())
    in.tell("parts", "no part", "at least one, from the fly up",
            "Write the leader, the sinking part and the floating body.");
  if (parts.size() > kMostParts)
    in.tell("parts", std::to_string(parts.size()) + " parts", "at most 100", "Put parts that are alike together.");
  return parts;
}

TowedFly read_case_fly(TypedObject& in, Temperature water) {
  TowedFly fly;
  fly.weight_in_water = read_force(in, "weight_in_water", kFlyWeights, Need::Required).value_or(Force{});
  const auto rate = read_sink_rate(in, "sink_rate", {Speed{}, kRates.most}, Need::Optional);
  const auto area = read_drag_area(in, "towed_drag_area", kDragAreas, Need::Optional);
  const double rho = water_at(water).density.si();           // kg/m3
  const double weight = std::abs(fly.weight_in_water.si());  // N
  const bool sinks = rate && *rate > Speed{};
  if (!in.has_any_spelling("sink_rate") && !in.has_any_spelling("towed_drag_area")) {
    in.tell("", "neither a sink rate nor a drag area", "\"towed_drag_area_m2\", \"sink_rate_m_s\" or both",
            "Add \"towed_drag_area_m2\".");
  } else if (rate && !sinks && !in.has_any_spelling("towed_drag_area")) {
    in.tell("", "a fly that does not sink, without a drag area", "\"towed_drag_area_m2\"",
            "Add \"towed_drag_area_m2\".");
  }
  fly.towed_drag_area =
      area.value_or(sinks ? square_metres(kTowedShare * 2.0 * weight / (rho * rate->si() * rate->si())) : Area{});
  const double broadside = fly.towed_drag_area.si() / kTowedShare;  // m2
  fly.sink_rate =
      rate.value_or(broadside > 0.0 ? metres_per_second(std::sqrt(2.0 * weight / (rho * broadside))) : Speed{});
  in.finish();
  return fly;
}

}  // namespace floatwright
