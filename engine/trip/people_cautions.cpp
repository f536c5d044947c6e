// What can hurt the people in the boat: cold, wading, rises.
#include <algorithm>

#include "engine/trip/cautions.hpp"
#include "engine/trip/dam_fronts.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/wading.hpp"
#include "engine/trip/weights.hpp"
#include "engine/water/surface_rise.hpp"

namespace floatwright {
namespace {

constexpr Temperature kLifeJacketsOn = fahrenheit(60.0);
constexpr Temperature kSwimIsAnEmergency = fahrenheit(50.0);

const char* const kBasisCold =
    "National Weather Service, cold water safety: cold shock within a minute, use of the muscles gone within ten. "
    "33 CFR 175.15: a wearable life jacket aboard for each person; a State's own rule may ask more";
const char* const kPublishedCold = "NWS; 33 CFR 175.15";
const char* const kBasisWading =
    "Australian Rainfall & Runoff Project 10, adults (from memory); the rule of ten of stream gaging is for trained "
    "gaugers";
const char* const kPublishedWading = "Australian Rainfall & Runoff";
const char* const kBasisRise = "judgement: no public agency's figure for a rate of rise is known";

// judgement
constexpr double kFastRise = 1.25;
constexpr Period kFastRiseTime = std::chrono::hours{3};
constexpr Length kFastRiseHeight = feet(0.5);
constexpr Period kFastRiseHeightTime = std::chrono::hours{1};
constexpr Period kLook = std::chrono::minutes{15};

bool somebody_wades(const Preferences& preferences) {
  const auto& platforms = preferences.platforms;
  if (std::find(platforms.begin(), platforms.end(), Platform::Wading) != platforms.end()) return true;
  return std::any_of(preferences.anglers.begin(), preferences.anglers.end(), [](const Angler& a) { return a.wades; });
}

std::optional<WadedLane> worst_lane(const RiverDay& day, const TimedPassage& row, const WadingLimits& limits) {
  std::optional<WadedLane> worst;
  for (const Water& water : waters_of(day, row.passage)) {
    const auto there = lane_at(day, row.passage, water, row.read_at());
    if (!there.has_value() || !too_much_to_wade(*there, limits)) continue;
    const WadedLane met = waded(*there);
    if (!worst || met.product() > worst->product()) worst = met;
  }
  return worst;
}

std::optional<Caution> rise_by(const RiverDay& day, const TimedPassage& row, Instant t, bool high) {
  const auto then = known_flow(day, row.passage.reach, t - kFastRiseTime);
  const auto hour_ago = known_flow(day, row.passage.reach, t - kFastRiseHeightTime);
  const auto now = known_flow(day, row.passage.reach, t);
  if (!then.has_value() || !hour_ago.has_value() || !now.has_value()) return std::nullopt;
  const auto of = [high](const PerCase<Discharge>& flow) { return high ? flow.high : flow.middle; };
  const Reach& reach = day.graph.reaches[row.passage.reach];
  const Channel channel = channel_of(day.river, reach, now->middle);
  const Length rise = surface_rise(surface_law_of(day.river, reach), channel, of(*hour_ago), of(*now));
  if (of(*now) < kFastRise * of(*then) && rise < kFastRiseHeight) return std::nullopt;
  Caution caution{.kind = CautionKind::FastRise, .weight = weight_of(CautionKind::FastRise), .where = row.passage.name};
  caution.from = t - kFastRiseTime;
  caution.to = t;
  caution.basis = kBasisRise;
  caution.our_judgement = true;
  caution.flow = of(*then);
  caution.flow_after = of(*now);
  caution.rise = std::max(rise, Length{});
  return caution;
}

std::optional<Caution> first_rise(const RiverDay& day, const TimedPassage& row) {
  for (Instant t = row.arrive;; t = std::min(t + kLook, row.leave)) {
    for (const bool high : {false, true}) {
      if (auto rise = rise_by(day, row, t, high)) return rise;
    }
    if (t >= row.leave) return std::nullopt;
  }
}

}  // namespace

void add_cold_water(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  std::optional<Caution> coldest;
  for (const TimedPassage& row : times.rows) {
    for (const Instant t : {row.arrive, row.read_at(), row.leave}) {
      const auto there = known_temperature(day, row.passage.reach, t);
      if (!there.has_value() || there->low >= kLifeJacketsOn) continue;
      if (coldest && *coldest->temperature <= there->low) continue;
      coldest = Caution{.kind = CautionKind::ColdWater,
                        .weight = weight_of(CautionKind::ColdWater),
                        .basis = kBasisCold,
                        .published = kPublishedCold};
      coldest->at = t;
      coldest->temperature = there->low;
    }
  }
  if (!coldest) return;
  coldest->emergency = *coldest->temperature < kSwimIsAnEmergency;
  coldest->temperature_limit = coldest->emergency ? kSwimIsAnEmergency : kLifeJacketsOn;
  coldest->from = times.launch;
  coldest->to = times.end;
  cautions.push_back(*coldest);
}

void add_wading(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  if (!somebody_wades(day.settings.preferences)) return;
  const WadingLimits limits = wading_limits(day.settings);
  for (const TimedPassage& row : times.rows) {
    const auto worst = worst_lane(day, row, limits);
    if (!worst) continue;
    Caution caution{.kind = CautionKind::Wading, .weight = weight_of(CautionKind::Wading), .where = row.passage.name};
    caution.from = row.arrive;
    caution.to = row.leave;
    caution.typed_limit = limits.typed;
    caution.basis = limits.typed ? "your own limit" : kBasisWading;
    if (!limits.typed) caution.published = kPublishedWading;
    caution.depth = worst->depth;
    caution.speed = worst->speed;
    caution.product = worst->product();
    caution.product_limit = limits.product;
    cautions.push_back(caution);
  }
}

void add_dam_fronts(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  for (const DamFront& front : fronts_met(day.flows.fronts, times)) {
    const CautionKind kind = is_rise(front) ? CautionKind::DamRise : CautionKind::DamDrop;
    Caution caution{.kind = kind, .weight = weight_of(kind), .where = front.place_name};
    caution.about = front.dam < day.river.dams.size() ? day.river.dams[front.dam].name : "";
    caution.from = front.earliest;
    caution.at = front.expected;
    caution.to = front.latest;
    caution.flow = front.before;
    caution.flow_after = front.after;
    caution.basis =
        front.seen_at_gauge
            ? "change seen at the gauge below the dam and the travel of a wave; earliest and latest hours are judgement"
            : "release schedule as typed and the travel of a wave; earliest and latest hours are judgement";
    cautions.push_back(caution);
  }
}

void add_fast_rise(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  for (const TimedPassage& row : times.rows) {
    if (const auto rise = first_rise(day, row)) cautions.push_back(*rise);
  }
}

}  // namespace floatwright
