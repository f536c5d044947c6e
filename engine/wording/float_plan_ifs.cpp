#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostIfs = 4;

std::string where_words(const TakesOver& t) {
  if (t.where.size() == 1) return t.where.front();
  return t.where.front() + " first, then " + (t.where.size() == 2 ? t.where.back() : "other water");
}

// Lines of one name (a spare of the same kind) are told once.
std::string replaced_words(const Told& told, const TakesOver& t) {
  std::vector<std::string> lines;
  for (const Rig& rig : t.from) {
    const std::string line = say_line(told.in.tackle, rig, told.units);
    if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(line);
  }
  return joined(lines);
}

std::string take_over_words(const Told& told, const TakesOver& t) {
  const Tackle& tackle = told.in.tackle;
  const auto rod = in_boat(told.rods, tackle, t.to.rig);
  return fmt::format("{} {} {}: {}{}, {}, in place of {}.", t.under ? "Under" : "Over",
                     say_rough_flow(t.at, told.units), where_words(t), say_line(tackle, t.to.rig, told.units),
                     rod ? " on " + told.rods.rods[*rod].letter : not_at_hand(told), say_how(told, t.to.technique),
                     replaced_words(told, t));
}

// Of lines whose rod stays ashore one is told at most; what takes an unlikely flow, only where nothing else is told.
std::vector<std::string> take_over_lines(const Told& told) {
  std::vector<std::string> lines;
  bool ashore_told = false, likely_told = false;
  for (const TakesOver& t : lines_that_take_over(told)) {
    if (lines.size() == kMostIfs) break;
    if (!t.likely && (likely_told || !t.in_boat)) continue;
    if (!t.in_boat && ashore_told) continue;
    ashore_told = ashore_told || !t.in_boat;
    likely_told = likely_told || t.likely;
    lines.push_back(take_over_words(told, t));
  }
  return lines;
}

// How much lower and higher than told the river may be with every water keeping its line; none where one was not
// looked at. Shares of the flow, since the river is not the same at every reach and hour.
struct Shares {
  double low = 0.0, high = 0.0;
};
std::optional<Shares> same_lines_within(const PlannedStretch& stretch) {
  std::optional<Shares> within;
  for (const PlannedReach& reach : stretch.reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!water.choice.best || !reach.closed_why.empty()) continue;
      const FlowRange& holds = water.choice.holds;
      if (!holds.from || !holds.to || !reach.whole_flow || !(*reach.whole_flow > Discharge{})) return std::nullopt;
      const double low = *holds.from / *reach.whole_flow, high = *holds.to / *reach.whole_flow;
      within = within ? Shares{std::max(within->low, low), std::min(within->high, high)} : Shares{low, high};
    }
  }
  return within;
}

// Below a dam its schedule decides, but creeks still rise.
std::string rain_words(const Told& told) {
  const GaugeOutlook* outlook = main_outlook(told.plan);
  const bool scheduled = outlook != nullptr && (outlook->method == FlowMethod::Schedule ||
                                                !followed_dam(told.plan, told.in.river, outlook->gauge).empty());
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

std::string say_where_lines_hold(const Told& told) {
  const auto within = same_lines_within(*told.floated);
  const auto& launch = told.floated->flow_at_launch;
  if (!within || !launch || within->low > 1.0 || within->high < 1.0) return "";
  return fmt::format("Same lines from {} to {} {}.", flow_figure(launch->best * within->low, told.units),
                     say_flow(launch->best * within->high, told.units),
                     at_spot(told) ? "there at " + told.clock.ten_minutes(told.floated->launch) : "at the put-in at launch");
}

void add_ifs(Page& page, const Told& told) {
  std::vector<std::string> lines = take_over_lines(told);
  if (const std::string holds = say_where_lines_hold(told); !holds.empty()) lines.push_back(holds);
  if (!rain_is_said(told)) lines.push_back(rain_words(told));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, "IF"});
}

}  // namespace floatwright
