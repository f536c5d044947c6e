#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostIfs = 4;

bool same_line(const Rig& a, const Rig& b) { return a.line == b.line && a.tip == b.tip; }

bool is_nearer(bool under, Discharge a, Discharge b) { return under ? a > b : a < b; }

void note(std::vector<TakesOver>& all, bool under, const LineChange& change, const Rig& from,
          const std::string& where) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const TakesOver& t) {
    return t.under == under && same_line(t.from, from) && same_line(t.to.rig, change.to.rig);
  });
  if (found == all.end()) {
    all.push_back({under, change.at, {where}, from, change.to});
    return;
  }
  const bool nearer = is_nearer(under, change.at, found->at);
  if (std::find(found->where.begin(), found->where.end(), where) == found->where.end())
    found->where.insert(nearer ? found->where.begin() : found->where.end(), where);
  if (nearer) {
    found->at = change.at;
    found->to = change.to;
  }
}

std::string take_over_words(const Told& told, const TakesOver& t) {
  const Tackle& tackle = told.in.tackle;
  const auto rod = in_boat(told.rods, tackle, t.to.rig);
  const std::string where_to = rod ? " on " + told.rods.rods[*rod].letter : " (its rod is not in the boat)";
  const std::string more = t.where.size() > 1 ? " first, then other reaches" : "";
  return fmt::format("{} {} at {}{}: {}{}, {}, in place of {}.", t.under ? "Under" : "Over",
                     say_rough_flow(t.at, told.units), typed(t.where.front()), more,
                     say_line(tackle, t.to.rig, told.units), where_to, say(t.to.technique),
                     say_line(tackle, t.from, told.units));
}

// The flows in which every water keeps its line, where each was looked at.
std::string holds_words(const Told& told) {
  std::optional<Discharge> from, to;
  for (const PlannedReach& reach : told.floated->reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!water.choice.best || !reach.closed_why.empty()) continue;
      const FlowRange& holds = water.choice.holds;
      if (!holds.from || !holds.to) return "";
      if (!from || *holds.from > *from) from = holds.from;
      if (!to || *holds.to < *to) to = holds.to;
    }
  }
  if (!from || !to || *to <= *from) return "";
  return fmt::format("Same lines from {} to {}.", rough_flow_figure(*from, told.units),
                     say_rough_flow(*to, told.units));
}

// Below a dam its schedule decides, but creeks still rise.
std::string rain_words(const Told& told) {
  const GaugeOutlook* outlook = main_outlook(told.plan);
  const bool scheduled = outlook != nullptr && outlook->method == FlowMethod::Schedule;
  const std::string rain = told.day_word == "tomorrow" ? "If it rains tonight" : "If it rains";
  return rain + (scheduled ? " or the dam leaves its schedule" : "") +
         " all of this is wrong: no rain forecast was read.";
}

// The day's cautions may say so already.
bool rain_is_said(const Told& told) {
  const auto& cautions = told.plan.cautions;
  return std::any_of(cautions.begin(), cautions.end(),
                     [](const Caution& c) { return c.kind == CautionKind::ForecastDoubt && !c.text.empty(); });
}

}  // namespace

std::vector<TakesOver> lines_that_take_over(const Told& told) {
  std::vector<TakesOver> all;
  if (told.floated == nullptr) return all;
  for (const PlannedReach& reach : told.floated->reaches) {
    for (const PlannedWater& water : reach.waters) {
      const WaterChoice& choice = water.choice;
      if (!choice.best || !reach.closed_why.empty()) continue;
      if (choice.changes_below) note(all, true, *choice.changes_below, choice.best->rig, reach.name);
      if (choice.changes_above) note(all, false, *choice.changes_above, choice.best->rig, reach.name);
    }
  }
  const auto& flow = told.floated->flow_at_launch;
  const auto distance = [&](const TakesOver& t) { return flow ? std::abs(std::log(t.at / flow->best)) : 0.0; };
  std::stable_sort(all.begin(), all.end(),
                   [&](const TakesOver& a, const TakesOver& b) { return distance(a) < distance(b); });
  return all;
}

void add_ifs(Page& page, const Told& told) {
  std::vector<std::string> lines;
  for (const TakesOver& t : lines_that_take_over(told))
    if (lines.size() < kMostIfs) lines.push_back(take_over_words(told, t));
  if (const std::string holds = holds_words(told); !holds.empty()) lines.push_back(holds);
  if (!rain_is_said(told)) lines.push_back(rain_words(told));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, "IF"});
}

}  // namespace floatwright
