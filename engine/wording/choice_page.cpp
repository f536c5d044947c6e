#include "engine/wording/choice_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_choice.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"

namespace floatwright {
namespace {

bool same(const ScoredRig& a, const ScoredRig& b) { return a.rig == b.rig && a.technique == b.technique; }

int percent(double share) { return static_cast<int>(std::lround(100.0 * share)); }

// Seconds are compared inside a method, worth between methods.
std::string behind(const ScoredRig& rig, const ScoredRig& best, const ChoiceJudgement& judgement) {
  const bool same_method = rig.technique.method == best.technique.method;
  const double mine = same_method ? rig.seconds : rig.worth, its = same_method ? best.seconds : best.worth;
  if (mine >= (1.0 - judgement.tie) * its) return same_method ? "as good" : "worth as much";
  return fmt::format("{} % {}", percent(1.0 - mine / its), same_method ? "less" : "less worth");
}

std::string why_not(const Told& told, const WaterChoice& choice, const ScoredRig& rig) {
  const ChoiceJudgement& judgement = told.in.judgement.choice;
  if (choice.best && same(rig, *choice.best)) return "CHOSEN";
  if (rig.seconds < judgement.least_seconds) return fmt::format("under {:.0f} s", judgement.least_seconds);
  if (rig.efficiency < judgement.least_efficiency) return fmt::format("under {} %", percent(judgement.least_efficiency));
  if (!(rig.worth > 0.0)) return "not this water";
  if (is_elsewhere(rig.rig, told.in.tackle, told.in.settings.preferences)) return "in another boat";
  if (!in_boat(told.rods, told.in.tackle, rig.rig)) return "stays ashore";
  return choice.best ? behind(rig, *choice.best, judgement) : "";
}

// A line fished by one method: the chosen way, else the one of most seconds, and of how many.
struct LineByMethod {
  const ScoredRig* best;
  int ways;
};
std::vector<LineByMethod> by_line_and_method(const WaterChoice& choice, const std::vector<ScoredRig>& scored) {
  const auto is_chosen = [&](const ScoredRig& rig) { return choice.best && same(rig, *choice.best); };
  std::vector<LineByMethod> lines;
  for (const ScoredRig& rig : scored) {
    const auto line = std::ranges::find_if(lines, [&](const LineByMethod& one) {
      return same_line(one.best->rig, rig.rig) && one.best->technique.method == rig.technique.method;
    });
    if (line == lines.end()) {
      lines.push_back({&rig, 1});
      continue;
    }
    ++line->ways;
    const bool more = rig.seconds > line->best->seconds && !is_chosen(*line->best);
    if (more || is_chosen(rig)) line->best = &rig;
  }
  return lines;
}

PageTable table_of(const Told& told, const WaterChoice& choice, const std::vector<ScoredRig>& scored) {
  PageTable table{{"SEC", "SHARE", "WORTH", "WAYS", "WHY NOT", "BEST WAY"}, {"of 60", "%", "%", "", "", ""}, {}};
  for (const auto& [rig, ways] : by_line_and_method(choice, scored)) {
    table.rows.push_back({fmt::format("{:.0f}", rig->seconds), fmt::format("{}", percent(rig->efficiency)),
                          fmt::format("{}", percent(rig->worth)), fmt::format("{}", ways), why_not(told, choice, *rig),
                          fmt::format("{}, {}: {}", say_line(told.in.tackle, rig->rig, told.units),
                                      say_fly(told.in.tackle, rig->rig), say(rig->technique))});
  }
  return table;
}

std::string how_to_read(const ChoiceJudgement& judgement) {
  return fmt::format(
      "Each line by each method, in the best of the ways scored. Seconds of each minute in which a fish would take the "
      "fly; what share that is of the most that this way of fishing could have; worth, by which methods are compared, "
      "from that share, your preference and how the method suits the water. As good is within {} %: there what is "
      "rigged stays, else the plainer tackle is taken. A line that is not listed can't be fished so, or is far behind: "
      "sink says which.",
      percent(judgement.tie));
}

}  // namespace

Page choice_page(const DayPlan& plan, const DayInputs& in, const std::vector<ChoiceTable>& tables) {
  const Told told = floatwright::told(plan, in);
  Page page{"Behind the choices", {Heading{"BEHIND THE CHOICES", in.settings.boat_of_several, 1}}};
  page.blocks.push_back(Lines{{how_to_read(in.judgement.choice)}, ""});
  for (const ChoiceTable& table : tables) {
    const PlannedReach& reach = told.floated->reaches[table.reach];
    const PlannedWater& water = reach.waters[table.water];
    page.blocks.push_back(Heading{at_water(reach, water), told.clock.ten_minutes(reach.arrive), 2});
    const std::string change = say_change(water.choice, in.tackle, told.units);
    const std::string why = water.choice.best ? reason(told, water) : water.choice.why_none;
    page.blocks.push_back(Lines{{why + (change.empty() ? "" : "; " + change)}, ""});
    if (!table.scored.empty()) page.blocks.push_back(table_of(told, water.choice, table.scored));
  }
  return page;
}

}  // namespace floatwright
