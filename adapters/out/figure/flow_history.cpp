#include "adapters/out/figure/flow_history.hpp"

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

using Pieces = std::vector<std::vector<FlowKnown>>;

// The rows within these instants, both included, parted where a flow is not known.
Pieces pieces(const std::vector<FlowRow>& course, Instant from, Instant to) {
  Pieces all;
  bool goes_on = false;
  for (const FlowRow& row : course) {
    const bool known = row.flow.has_value() && row.at >= from && row.at <= to;
    if (known && !goes_on) all.emplace_back();
    if (known) all.back().push_back({row.at, *row.flow});
    goes_on = known;
  }
  std::erase_if(all, [](const auto& piece) { return piece.size() < 2; });
  return all;
}

// The last row that what was read reaches to: dashes begin where the line ends.
Instant newest_row(const std::vector<FlowRow>& course, Instant made_at) {
  Instant newest = course.front().at;
  for (const FlowRow& row : course)
    if (row.at <= made_at) newest = row.at;
  return newest;
}

std::vector<DamFront> fronts_at(const DayPlan& plan, RiverPlace place) {
  std::vector<DamFront> here;
  for (const DamFront& front : plan.fronts)
    if (front.place == place && front.latest > plan.made_at && front.earliest < plan.course.back().at)
      here.push_back(front);
  return here;
}

void add_hours(FlowCourse& history, const Told& told) {
  const PlannedStretch& floated = *told.floated;
  if (!at_spot(told)) {
    history.there =
        "afloat " + told.clock.ten_minutes(floated.launch) + "-" + told.clock.ten_minutes(floated.off_by);
    history.hours = {{floated.launch, floated.off_by}};
    return;
  }
  history.there = "fishing " + fished_hours(floated, told.clock);
  for (const PlannedReach& hours : floated.reaches) {
    if (!is_fished(hours)) continue;
    const bool goes_on = !history.hours.empty() && history.hours.back().second == hours.arrive;
    if (goes_on) history.hours.back().second = hours.leave;
    if (!goes_on) history.hours.emplace_back(hours.arrive, hours.leave);
  }
}

}  // namespace

std::optional<FlowCourse> flow_history(const DayPlan& plan, const DayInputs& in) {
  if (plan.course.empty()) return std::nullopt;
  FlowCourse history;
  history.place = typed(plan.course_at);
  history.from = plan.course.front().at;
  history.to = plan.course.back().at;
  const Instant newest = newest_row(plan.course, plan.made_at);
  history.past = pieces(plan.course, history.from, newest);
  history.expected = pieces(plan.course, newest, history.to);
  if (history.past.empty() && history.expected.empty()) return std::nullopt;
  const Told facts = told(plan, in);
  if (facts.floated == nullptr || facts.floated->verdict != Verdict::Recommended) return history;
  add_hours(history, facts);
  history.fronts = fronts_at(plan, facts.floated->from_place);
  return history;
}

}  // namespace floatwright
