// What can hurt the people in the boat: cold, wading, rises.
#include <algorithm>

#include "engine/river/names.hpp"
#include "engine/trip/cautions.hpp"
#include "engine/trip/dam_fronts.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/weights.hpp"

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

bool somebody_wades(const Preferences& preferences) {
  const auto& platforms = preferences.platforms;
  if (std::find(platforms.begin(), platforms.end(), Platform::Wading) != platforms.end()) return true;
  return std::any_of(preferences.anglers.begin(), preferences.anglers.end(), [](const Angler& a) { return a.wades; });
}

// "Mill run (bank)" where a reach has several waters.
std::string water_name(const RiverDay& day, const Passage& passage, const Water& water) {
  const bool alone = waters_of(day, passage).size() == 1;
  return alone ? passage.name : passage.name + " (" + std::string(word_for(water.type)) + ")";
}

}  // namespace

Caution wading_caution(const WadedLane& met, const WadingLimits& limits) {
  Caution caution{.kind = CautionKind::Wading, .weight = weight_of(CautionKind::Wading)};
  caution.typed_limit = limits.typed;
  caution.basis = limits.typed ? "your own limit" : kBasisWading;
  if (!limits.typed) caution.published = kPublishedWading;
  caution.depth = met.depth;
  caution.depth_limit = limits.depth;
  caution.speed = met.speed;
  caution.product = met.product();
  caution.product_limit = limits.product;
  return caution;
}

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

// What the plan fishes there is not asked: a heat stop that keeps people from fishing keeps nobody from getting out.
void add_wading(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  if (!somebody_wades(day.settings.preferences)) return;
  const WadingLimits limits = wading_limits(day.settings);
  std::optional<Caution> most;  // of what may be waded
  for (const TimedPassage& row : times.rows) {
    const bool open = row.fished && !may_come_up(day, row.passage, row.read_at());
    for (const Water& water : waters_of(day, row.passage)) {
      const auto there = lane_at(day, row.passage, water, row.read_at());
      if (!there.has_value()) continue;
      Caution caution = wading_caution(waded(*there), limits);
      caution.where = water_name(day, row.passage, water);
      caution.from = row.arrive;
      caution.to = row.leave;
      if (too_much_to_wade(*there, limits))
        cautions.push_back(caution);
      else if (open && (!most || *caution.product > *most->product))
        most = caution;
    }
  }
  if (most) cautions.push_back(*most);
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

}  // namespace floatwright
