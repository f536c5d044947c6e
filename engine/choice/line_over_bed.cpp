#include "engine/choice/line_over_bed.hpp"

#include "engine/choice/score.hpp"

namespace floatwright {

Measured<LineOverBed> line_over_bed(const WaterToFish& water, const ScoredRig& rig, const Tackle& tackle,
                                    const Preferences& preferences, const Judgement& judgement) {
  const Scene scene = scene_of(water, tackle, preferences, judgement);
  if (!scene.cases.middle) return Absent{scene.cases.middle.why_absent()};
  const CastSetting setting =
      middle_setting(scene, rig.rig, rig.technique.platform, SetLeader{rig.indicator_to_fly, {}});
  auto shape = line_shape(tackle, rig.rig, rig.technique, setting, rig.fly_depth.best);
  if (!shape) return Absent{shape.why_absent()};
  const Zone taken = middle_zone(scene, rig.technique.method);
  const double full = judgement.zone.full_share_of_reach;
  const Length over_bed = taken.hold + full * taken.reach;
  return LineOverBed{rig, taken.depth, std::max(Length{}, taken.depth - over_bed), *std::move(shape)};
}

}  // namespace floatwright
