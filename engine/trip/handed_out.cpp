#include "engine/trip/handed_out.hpp"

#include <algorithm>

#include "engine/trip/heat.hpp"

namespace floatwright {
namespace {

RodHandedOut rod_handed_out(const Rig& rig, const Tackle& tackle) {
  const Line& line = tackle.lines.at(rig.line);
  return {line.on_rod, line.id, rig.tip ? tackle.tips.at(*rig.tip).id : "", tackle.flies.at(rig.fly).id, rig.shot};
}

template <class T>
std::optional<T> best(const Measured<Band<T>>& band) {
  return band ? std::optional{band->best} : std::nullopt;
}

StretchHandedOut stretch_handed_out(const PlannedStretch& floated, const Tackle& tackle) {
  StretchHandedOut out{floated.from,   floated.to,     floated.from_name, floated.to_name,
                       floated.launch, floated.off_by, floated.stop_by,   best(floated.flow_at_launch),
                       best(floated.water_at_launch), {}};
  for (const Rig& rig : floated.rigged) out.rods.push_back(rod_handed_out(rig, tackle));
  return out;
}

void add(std::vector<CautionHandedOut>& all, const std::vector<Caution>& cautions) {
  for (const Caution& caution : cautions) all.push_back({caution.kind, caution.where, caution.about, caution.at});
}

}  // namespace

HandedOut handed_out(const DayPlan& plan, const Tackle& tackle, const std::string& whose) {
  HandedOut out{plan.made_at, plan.day, whose, std::nullopt, {}};
  add(out.cautions, plan.cautions);
  const auto floated = std::find_if(plan.stretches.begin(), plan.stretches.end(),
                                    [](const PlannedStretch& s) { return s.verdict != Verdict::RuledOut; });
  if (plan.nothing || floated == plan.stretches.end()) return out;
  out.stretch = stretch_handed_out(*floated, tackle);
  add(out.cautions, with_first_heat_stop(floated->cautions));
  return out;
}

}  // namespace floatwright
