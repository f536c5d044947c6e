#include "engine/trip/cautions.hpp"

#include <algorithm>

#include "engine/trip/flow_limits.hpp"

namespace floatwright {

std::vector<Caution> sorted(std::vector<Caution> cautions) {
  std::stable_sort(cautions.begin(), cautions.end(), [](const Caution& a, const Caution& b) {
    if (a.weight != b.weight) return a.weight > b.weight;
    return a.from && b.from && *a.from < *b.from;
  });
  return cautions;
}

std::vector<Caution> stretch_cautions(const RiverDay& day, const Stretch& stretch, const PlannedStretch& planned) {
  std::vector<Caution> cautions;
  if (stretch.times.rows.empty()) return cautions;
  // Whatever rules the stretch out first: one that is too long as well is no safer for the boat.
  add_boat_limits(flow_limits(day, stretch.times), cautions);
  add_hazards(day, stretch.times, cautions);
  add_dam_fronts(day, stretch.times, cautions);
  add_fast_rise(day, stretch.times, cautions);
  add_cold_water(day, stretch.times, cautions);
  add_wading(day, stretch.times, cautions);
  add_dark(day, stretch.times, cautions);
  add_wind(day, stretch.times, cautions);
  add_closures(day, stretch.times, cautions);
  const HeatLimits limits = heat_limits(day.river, day.settings);
  add_heat_cautions(day, heat_of(day, stretch.times, limits), limits, cautions);
  add_unknown_water(planned.reaches, cautions);
  return sorted(std::move(cautions));
}

std::vector<Caution> day_cautions(const RiverDay& day, const std::vector<GaugeOutlook>& outlooks) {
  std::vector<Caution> cautions;
  add_gauge_cautions(day, cautions);
  add_rising_now(outlooks, day.river, cautions);
  add_wood(day, cautions);
  add_rules_old(day, cautions);
  add_closure_likely(day, cautions);
  add_forecast_doubt(day, cautions);
  add_rain(day, cautions);
  return sorted(std::move(cautions));
}

}  // namespace floatwright
