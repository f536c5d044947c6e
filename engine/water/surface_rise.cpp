#include "engine/water/surface_rise.hpp"

#include <algorithm>

#include "engine/water/gauge_near.hpp"

namespace floatwright {
namespace {

Measured<Length> mean_height(const std::vector<SurveyedSection>& sections, std::optional<double> slope,
                             Discharge flow) {
  Length sum;
  for (const auto& section : sections) {
    const auto surface = surface_at(section, slope_of(section, slope).value_or(0.0), flow);
    if (!surface.has_value()) return surface;
    sum = sum + (*surface - lowest_ground(section));
  }
  return sum / static_cast<double>(sections.size());
}

}  // namespace

SurfaceLaw surface_law_of(const River& river, const Reach& reach) {
  SurfaceLaw law;
  if (reach.named_reach) {
    const NamedReach& named = river.reaches[*reach.named_reach];
    law.slope = named.slope;
    if (!named.sections.empty()) law.sections = &named.sections;
  }
  const bool any = std::ranges::any_of(river.gauges, [](const GaugeSite& g) { return g.rating.has_value(); });
  if (!any) return law;
  for (const auto& [gauge, away] : gauges_of_one_flow(river, reach)) {
    if (away > kGaugeSpeaksFor) break;
    if (!river.gauges[gauge].rating) continue;
    law.rating = &*river.gauges[gauge].rating;
    break;
  }
  return law;
}

Measured<Length> surface_height(const SurfaceLaw& law, Discharge flow) {
  if (law.sections != nullptr) return mean_height(*law.sections, law.slope, flow);
  if (law.rating == nullptr) return Absent{"no rating and no surveyed section"};
  const auto stage = stage_at(*law.rating, flow);
  if (!stage.has_value()) return Absent{stage.why_absent()};
  return metres(stage->si());
}

Length surface_rise(const SurfaceLaw& law, const Channel& channel, Discharge from, Discharge to) {
  const auto before = surface_height(law, from), after = surface_height(law, to);
  if (before.has_value() && after.has_value()) return *after - *before;
  return mean_depth(channel, to) - mean_depth(channel, from);
}

}  // namespace floatwright
