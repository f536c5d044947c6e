#include "engine/trip/met_water.hpp"

#include <algorithm>
#include <cmath>

#include "engine/river/shares.hpp"
#include "engine/trip/bands.hpp"
#include "engine/trip/dam_fronts.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/season.hpp"
#include "engine/trip/wading.hpp"
#include "engine/water/bed_profile.hpp"
#include "engine/water/described.hpp"
#include "engine/water/reach_at_flow.hpp"

namespace floatwright {
namespace {

// Turbidity times the distance at which a thing is lost to sight under water: 4 FNU m, judgement (order of magnitude;
// clear water of five feet is about 3 FNU).
constexpr double kFnuMetres = 4.0;
constexpr double kFasterThanTheEdge = 1.5;  // the boat's thread beside a bank, eddy or pocket; judgement

const Water* find_water(const std::vector<Water>& waters, WaterType type) {
  const auto found = std::find_if(waters.begin(), waters.end(), [&](const Water& w) { return w.type == type; });
  return found == waters.end() ? nullptr : &*found;
}

bool beside_the_boat(WaterType type) {
  return type == WaterType::Bank || type == WaterType::Eddy || type == WaterType::Pocket;
}

const LearnedWater* learned_of(const RiverDay& day, const Passage& passage, WaterType type) {
  if (day.learned == nullptr) return nullptr;
  const Reach& reach = day.graph.reaches[passage.reach];
  if (passage.spot) return learned_of(*day.learned, WaterHolder::Spot, *passage.spot, type);
  if (reach.named_reach) return learned_of(*day.learned, WaterHolder::NamedReach, *reach.named_reach, type);
  return reach.note ? learned_of(*day.learned, WaterHolder::StretchNote, *reach.note, type) : nullptr;
}

// With what was logged of the water since it was noted.
Measured<Lane> as_met(const RiverDay& day, const Passage& passage, const Water& water, Measured<Lane> noted) {
  const LearnedWater* const met = learned_of(day, passage, water.type);
  if (met == nullptr || !noted.has_value()) return noted;
  return corrected(*noted, *met);
}

// The thread the boat is in: the water fished, but for bank, eddy and pocket the reach's run, else riffle, else 1.5
// times.
PerCase<SurfaceSpeed> boat_lane(const RiverDay& day, const Passage& passage, const Water& fished,
                                const Lane& lane_fished, const ReachAtFlow& reach) {
  if (!beside_the_boat(fished.type)) return lane_fished.surface_speed;
  for (const WaterType thread : {WaterType::Run, WaterType::Riffle}) {
    const Water* water = find_water(waters_of(day, passage), thread);
    if (water == nullptr) continue;
    const auto there = as_met(day, passage, *water, reach.lane_of(*water));
    if (there.has_value()) return there->surface_speed;
  }
  return each_case(lane_fished.surface_speed, [](SurfaceSpeed u) { return kFasterThanTheEdge * u; });
}

// What the settings allow; at a spot as was typed for it.
std::vector<Platform> allowed_platforms(const RiverDay& day, const Passage& passage) {
  if (passage.spot) return {day.river.spots[*passage.spot].platform};
  return platforms_fished(day.settings.preferences);
}

std::optional<Speed> wind_at(const RiverDay& day, Instant t) {
  if (day.weather == nullptr) return std::nullopt;
  const auto met = strongest_wind(*day.weather, t, t + std::chrono::minutes{1});
  return met ? std::optional(met->speed) : std::nullopt;
}

// A strong wind sets the boat's course; one who allows nothing but drifting drifts all the same.
void less_drifting(std::vector<Platform>& allowed, const std::optional<Speed>& wind, const BoatJudgement& judgement) {
  const bool taken = wind && in_metres_per_second(*wind) > judgement.most_wind_m_s;
  const bool other =
      std::ranges::any_of(allowed, [](Platform p) { return p == Platform::Held || p == Platform::Anchored; });
  if (taken && other) std::erase(allowed, Platform::Drifting);
}

// Less wading where it is too deep or fast, less standing still while the water comes up.
std::vector<Platform> platforms(const RiverDay& day, const Passage& passage, const Lane& there, Instant t) {
  std::vector<Platform> allowed = allowed_platforms(day, passage);
  const bool no_wading = too_much_to_wade(there, wading_limits(day.settings));
  const bool rise = may_come_up(day, passage, t);
  std::erase_if(allowed, [&](Platform p) {
    return (p == Platform::Wading && (no_wading || rise)) || (p == Platform::Anchored && rise);
  });
  return allowed;
}

void print_lane(PlannedWater& printed, const Lane& there) {
  printed.depth = band_with_scatter(there.depth, there.sd_ln_depth);
  const Band<SurfaceSpeed> surface = band_with_scatter(there.surface_speed, there.sd_ln_speed);
  printed.surface_speed = surface;
  const Length depth = there.depth.middle;
  const auto mean = [&](SurfaceSpeed u) { return mean_speed(u, bed_profile(printed.bed, depth), depth); };
  printed.mean_speed = Band<MeanSpeed>{mean(surface.low), mean(surface.best), mean(surface.high)};
  printed.source = there.source;
  printed.far_from_note = there.far_from_note;
  printed.noted_at = there.noted_at;
  printed.beyond = there.beyond;
}

void print_unknown(PlannedWater& printed, const std::string& why) {
  printed.depth = Absent{why};
  printed.surface_speed = Absent{why};
  printed.mean_speed = Absent{why};
  printed.noted_at = Absent{why};
}

std::string why_no_platform(const RiverDay& day, const Passage& passage, const Lane& there) {
  const bool waded = passage.spot && day.river.spots[*passage.spot].platform == Platform::Wading;
  if (waded && too_much_to_wade(there, wading_limits(day.settings))) return kTooMuchToWade;
  return "no way of standing or floating is allowed there at that hour";
}

struct LaneMet {
  Measured<Lane> lane;
  PerCase<SurfaceSpeed> boat;  // where there is a lane
};

LaneMet lane_met(const RiverDay& day, const Passage& passage, const Water& water, const PerCase<Discharge>& own) {
  const ReachAtFlow reach(day.river, day.graph.reaches[passage.reach], own);
  LaneMet met{as_met(day, passage, water, reach.lane_of(water)), {}};
  if (met.lane.has_value()) met.boat = boat_lane(day, passage, water, *met.lane, reach);
  return met;
}

// The lane is known.
Measured<WaterToFish> to_fish(const RiverDay& day, const Passage& passage, const Water& water, const LaneMet& there,
                              Instant t) {
  WaterToFish asked;
  asked.type = water.type;
  asked.bed = bed_of(day, passage);
  asked.lane = *there.lane;
  asked.boat_lane = there.boat;
  const auto temperature = known_temperature(day, passage.reach, t);
  asked.temperature =
      temperature.has_value() ? Measured<Temperature>{temperature->middle} : Absent{temperature.why_absent()};
  asked.clarity = clarity_near(day, passage.middle());
  const auto position = position_near(day.river, passage.middle());
  if (position.has_value()) asked.sun_elevation = sun_elevation(*position, t);
  asked.hatch = !hatches_at(day, passage.reach, t).empty();
  asked.wind = wind_at(day, t);
  asked.platforms = platforms(day, passage, *there.lane, t);
  less_drifting(asked.platforms, asked.wind, day.judgement.boat);
  if (asked.platforms.empty()) return Absent{why_no_platform(day, passage, *there.lane)};
  return asked;
}

}  // namespace

std::vector<const Hatch*> hatches_at(const RiverDay& day, std::size_t reach, Instant t) {
  const auto temperature = known_temperature(day, reach, t);
  std::vector<const Hatch*> on;
  for (const Hatch& hatch : day.river.hatches) {
    if (!in_season(hatch.season, day.day) || !in_hours(hatch.hours, time_of_day(t, day.river.time_zone))) continue;
    const auto& least = hatch.least_temperature;
    if (!least || (temperature.has_value() && temperature->middle >= *least)) on.push_back(&hatch);
  }
  return on;
}

Measured<Turbidity> clarity_near(const RiverDay& day, RiverPlace place) {
  if (day.settings.visibility && *day.settings.visibility > Length{}) {
    return fnu(kFnuMetres / in_metres(*day.settings.visibility));
  }
  const GaugeRecord* nearest = nullptr;
  double least = 0.0;  // m along the river
  for (std::size_t i = 0; i < day.records.size() && i < day.river.gauges.size(); ++i) {
    const GaugeRecord& record = day.records[i];
    if (!day.river.gauges[i].place || record.turbidity.empty()) continue;
    if (day.now - record.turbidity.times.back() > kClarityHolds) continue;
    const double away = std::abs(in_metres(*day.river.gauges[i].place - place));
    if (nearest == nullptr || away < least) {
      nearest = &record;
      least = away;
    }
  }
  if (nearest == nullptr) return Absent{"no turbidity sensor and nothing typed"};
  return nearest->turbidity.values.back();
}

bool may_come_up(const RiverDay& day, const Passage& passage, Instant t) {
  return passage.rises || rise_expected(day, passage.from, passage.to, t);
}

MetWater met_water(const RiverDay& day, const Passage& passage, const Water& water, Instant t) {
  MetWater met{.printed = {.type = water.type, .bed = bed_of(day, passage), .fishing_time = water.fishing_time},
               .to_fish = {}};
  const std::vector<const Hatch*> hatches = hatches_at(day, passage.reach, t);
  met.printed.hatch = !hatches.empty();
  if (const LearnedWater* learned = learned_of(day, passage, water.type)) {
    met.printed.depth_met = learned->depth;
    met.printed.speed_met = learned->speed;
  }
  for (const Hatch* hatch : hatches)
    if (!hatch->name.empty()) met.printed.hatch_name += (met.printed.hatch_name.empty() ? "" : ", ") + hatch->name;

  const auto flow = known_flow(day, passage.reach, t);
  if (!flow.has_value()) {
    print_unknown(met.printed, flow.why_absent());
    met.to_fish = Absent{"the flow is unknown: " + flow.why_absent()};
    return met;
  }
  const LaneMet there = lane_met(day, passage, water, *flow);
  if (!there.lane.has_value()) {
    print_unknown(met.printed, there.lane.why_absent());
    met.to_fish = Absent{"depth and speed are unknown: " + there.lane.why_absent()};
    return met;
  }
  print_lane(met.printed, *there.lane);
  if (!is_described(day, passage)) met.printed.noted_at = Absent{"nobody noted it"};
  met.to_fish = to_fish(day, passage, water, there, t);
  return met;
}

Measured<Lane> lane_at(const RiverDay& day, const Passage& passage, const Water& water, Instant t) {
  const auto flow = known_flow(day, passage.reach, t);
  if (!flow.has_value()) return Absent{flow.why_absent()};
  const ReachAtFlow reach(day.river, day.graph.reaches[passage.reach], *flow);
  return as_met(day, passage, water, reach.lane_of(water));
}

std::optional<WaterToFish> water_at_flow(const RiverDay& day, const Passage& passage, const Water& water, Instant t,
                                         Discharge whole) {
  const Discharge own = own_flow(day.river, day.graph.reaches[passage.reach], whole);
  const LaneMet there = lane_met(day, passage, water, {own, own, own});
  if (!there.lane.has_value() || there.lane->far_from_note || there.lane->beyond) return std::nullopt;
  const auto asked = to_fish(day, passage, water, there, t);
  return asked.has_value() ? std::optional<WaterToFish>{*asked} : std::nullopt;
}

}  // namespace floatwright
