#include "engine/choice/limits.hpp"

#include "engine/units/unit.hpp"

namespace floatwright {

DriftLimits drift_limits(const Judgement& judgement) {
  const MendsJudgement& mends = judgement.mends;
  DriftLimits limits;
  limits.floating_mends = mends.floating;
  limits.sinking_leader_mends = mends.sinking_leader;
  limits.sinking_tip_mends = mends.sinking_tip;
  limits.shooting_head_mends = mends.shooting_head;
  limits.full_sinking_mends = mends.full_sinking;
  limits.dry_mends = mends.dry;
  limits.slack = metres(mends.slack_m);
  limits.drag_anchored = mends.drag_anchored;
  limits.drag_drifting = mends.drag_drifting;
  limits.hold_drifting = judgement.boat.hold_drifting;
  limits.hold_held = judgement.boat.hold_held;
  limits.hold_anchored = judgement.boat.hold_anchored;
  limits.casts_of_drift = mends.casts_of_drift;
  limits.longest_indicator = seconds(mends.longest_drift_s);
  limits.longest_dry = seconds(mends.longest_dry_s);
  limits.longest_cast = seconds(judgement.times.longest_cast_s);
  limits.led_through_water = metres_per_second(judgement.pace.tight_line_drag_m_s);
  limits.hang_down = degrees(judgement.pace.hang_down_deg);
  limits.hang_down_stay = seconds(judgement.pace.hang_down_stay_s);
  return limits;
}

}  // namespace floatwright
