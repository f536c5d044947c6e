// What is met at a spot, told to people on foot where they wade.
#include <algorithm>

#include "engine/trip/cautions.hpp"
#include "engine/trip/flow_limits.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/wading.hpp"
#include "engine/trip/weights.hpp"

namespace floatwright {
namespace {

// How near the lane is to the nearer of the two limits; over 1 is beyond it.
double share_of_limit(const WadedLane& lane, const WadingLimits& limits) {
  return std::max(lane.product() / limits.product, lane.depth / limits.depth);
}

struct Met {
  WadedLane lane;
  Instant from{}, to{};
};

// The worse of the two ends of some minutes, or the one that is known.
std::optional<WadedLane> worse_end(const RiverDay& day, const Passage& spot, const Water& water, Instant from,
                                   Instant to, const WadingLimits& limits) {
  std::optional<WadedLane> worse;
  for (const Instant t : {from, to}) {
    const auto there = lane_at(day, spot, water, t);
    if (!there.has_value()) continue;
    const WadedLane met = waded(*there);
    if (!worse || share_of_limit(met, limits) > share_of_limit(*worse, limits)) worse = met;
  }
  return worse;
}

// The worst lane beyond the limits in any hour, or within them where it may be waded, however warm the water is for
// fish; and from when to when such are met.
std::optional<Met> worst_met(const RiverDay& day, const Timetable& times, const WadingLimits& limits, bool too_much) {
  constexpr Period kStep = std::chrono::minutes{10};  // as the hours of a spot are looked at
  std::optional<Met> worst;
  for (const TimedPassage& row : times.rows) {
    for (Instant t = row.arrive; t < row.leave; t += kStep) {
      const Instant to = std::min(t + kStep, row.leave);
      const bool open =
          row.passage.closures.empty() && !may_come_up(day, row.passage, t) && !may_come_up(day, row.passage, to);
      if (!too_much && !open) continue;
      for (const Water& water : waters_of(day, row.passage)) {
        const auto met = worse_end(day, row.passage, water, t, to, limits);
        if (!met || (share_of_limit(*met, limits) > 1.0) != too_much) continue;
        const bool worse = !worst || share_of_limit(*met, limits) > share_of_limit(worst->lane, limits);
        worst = Met{worse ? *met : worst->lane, worst ? worst->from : t, to};
      }
    }
  }
  return worst;
}

// Always told: what is beyond the limits, and the most that is within them.
void add_wading_there(const RiverDay& day, const Timetable& times, std::vector<Caution>& cautions) {
  const WadingLimits limits = wading_limits(day.settings);
  for (const bool too_much : {true, false}) {
    const auto worst = worst_met(day, times, limits, too_much);
    if (!worst) continue;
    Caution caution = wading_caution(worst->lane, limits);
    caution.where = times.rows.front().passage.name;
    caution.from = worst->from;
    caution.to = worst->to;
    cautions.push_back(caution);
  }
}

// Those that a wader dies of come before all others.
void told_on_foot(std::vector<Caution>& cautions) {
  for (Caution& caution : cautions) {
    caution.on_foot = true;
    const bool wading = caution.kind == CautionKind::Wading || caution.kind == CautionKind::DamRise;
    if (wading || caution.kind == CautionKind::FastRise) caution.weight += kWadingFirst;
  }
}

// A rise is told once: its first hour at the place.
Timetable in_one_row(const Timetable& times) {
  Timetable one = times;
  one.rows.resize(1);
  one.rows.front().leave = times.rows.back().leave;
  return one;
}

// A dam's rise is told by its hours there: the same rise looked back on from its end would seem to begin hours before.
void leave_out_told_rises(std::vector<Caution>& cautions) {
  const std::vector<Caution> all = cautions;
  std::erase_if(cautions, [&](const Caution& rise) {
    return rise.kind == CautionKind::FastRise && std::any_of(all.begin(), all.end(), [&](const Caution& front) {
             return front.kind == CautionKind::DamRise && *front.from <= *rise.to && *front.to >= *rise.from;
           });
  });
}

}  // namespace

std::vector<Caution> spot_cautions(const RiverDay& day, const Stretch& stretch, const PlannedStretch& planned) {
  std::vector<Caution> cautions;
  if (stretch.times.rows.empty()) return cautions;
  Timetable whole = stretch.times;
  whole.launch = whole.rows.front().arrive;
  whole.end = whole.off_by = whole.rows.back().leave;
  if (is_wading(planned)) add_wading_there(day, whole, cautions);
  if (!is_wading(planned)) add_boat_limits(flow_limits(day, whole), cautions);
  add_dam_fronts(day, whole, cautions);
  add_fast_rise(day, in_one_row(whole), cautions);
  leave_out_told_rises(cautions);
  add_cold_water(day, whole, cautions);
  add_dark(day, whole, cautions);
  add_wind(day, whole, cautions);
  add_closures(day, whole, cautions);
  const HeatLimits limits = heat_limits(day.river, day.settings);
  add_heat_cautions(day, heat_of(day, whole, limits), limits, cautions);
  add_unknown_water(planned.reaches, cautions);
  if (is_wading(planned)) told_on_foot(cautions);
  return sorted(std::move(cautions));
}

}  // namespace floatwright
