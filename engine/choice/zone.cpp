#include "engine/choice/zone.hpp"

#include <algorithm>
#include <cmath>

#include "engine/choice/by_kind.hpp"
#include "engine/choice/share_by_height.hpp"

namespace floatwright {

Zone zone(const Lie& lie, Method method, const ZoneJudgement& judgement) {
  const double h = in_metres(lie.depth);                                                     // m
  const double hold = std::min(judgement.hold_height_m, judgement.hold_share_of_depth * h);  // m
  const double open = h > 0 ? share_of_surface(lie.profile, lie.depth, hold / h) : 1.0;
  const double u_h = by_bed(judgement.shelter, lie.bed) * open * in_metres_per_second(lie.surface_speed);  // m/s

  const double g_t = lie.temperature ? read(judgement.reach_by_temperature, in_celsius(*lie.temperature)) : 1.0;
  const double g_v = lie.temperature ? read(judgement.speed_by_temperature, in_celsius(*lie.temperature)) : 1.0;
  const double g_c = lie.clarity ? read(judgement.reach_by_clarity, in_fnu(*lie.clarity)) : 1.0;

  constexpr double kSlowest = 1e-3;                                                 // m/s, so that still water divides
  const double effort = u_h / std::max(kSlowest, judgement.focal_speed_m_s * g_v);  // u_h/V_f
  const double left = std::sqrt(std::max(0.0, 1.0 - effort * effort));
  const double reach = std::max(judgement.least_reach_m, by_method(judgement.reach_m, method) * g_t * g_c * left);  // m
  const double presence = (judgement.gone_at - effort) / (judgement.gone_at - judgement.leaves_from);
  return {lie.depth, metres(hold), metres(reach), metres_per_second(u_h), std::clamp(presence, 0.0, 1.0)};
}

double share_at(const Zone& zone, Length height, const ZoneJudgement& judgement) {
  return ShareByHeight(zone, judgement).at(Alone(in_metres(height)))[0];
}

double share_on_top(const Zone& zone, bool hatch, const ZoneJudgement& judgement) {
  if (hatch) return zone.presence;
  const double spare = in_metres(zone.reach - (zone.depth - zone.hold));               // m, reach beyond the surface
  const double fades = (1.0 - judgement.full_share_of_reach) * in_metres(zone.reach);  // m
  return zone.presence * std::clamp(spare / fades, 0.0, 1.0);
}

}  // namespace floatwright
