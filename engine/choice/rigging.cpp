#include "engine/choice/rigging.hpp"

#include <algorithm>

namespace floatwright {

LeaderClass leader_class(Method method) {
  switch (method) {
    case Method::Swing:
    case Method::Strip:
      return LeaderClass::Streamer;
    case Method::Indicator:
      return LeaderClass::Indicator;
    case Method::TightLine:
      return LeaderClass::TightLine;
    case Method::Dry:
      return LeaderClass::Dry;
  }
  return LeaderClass::Streamer;
}

Duration change_time(const Carried& from, const Carried& to, const ChangesJudgement& judgement) {
  if (from.rig.line != to.rig.line) return minutes(judgement.spool_min);
  const double leader = from.leader != to.leader ? judgement.leader_min : 0.0;  // min
  if (from.rig.tip != to.rig.tip) return minutes(std::max(judgement.tip_min, leader));
  if (from.leader != to.leader) return minutes(leader);
  const bool same_fly = from.rig.fly == to.rig.fly && from.rig.shot == to.rig.shot;
  return same_fly ? minutes(0) : minutes(judgement.fly_min);
}

bool is_elsewhere(const Rig& rig, const Tackle& tackle, const Preferences& preferences) {
  const std::string& on = tackle.lines[rig.line].on_rod;
  return std::ranges::any_of(preferences.rods_elsewhere, [&](std::size_t rod) { return tackle.rods[rod].id == on; });
}

bool same_line(const Rig& a, const Rig& b) { return a.line == b.line && a.tip == b.tip; }

}  // namespace floatwright
