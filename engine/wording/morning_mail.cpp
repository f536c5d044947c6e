#include "engine/wording/morning_mail.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "engine/wording/changed_since.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/line_words.hpp"
#include "engine/wording/morning_mail_lines.hpp"
#include "engine/wording/morning_mail_subject.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

void add_alarms(Page& page, const Told& told) {
  std::vector<std::string> lines;
  if (told.floated->stop_by)
    lines.push_back("TOO WARM after " + told.clock.ten_minutes_before(*told.floated->stop_by) +
                    ": stop fishing for trout by then, no fishing again that evening.");
  for (std::string& doubt : doubts(told)) lines.push_back(std::move(doubt));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, ""});
}

constexpr double kTold = 0.03;  // a change of flow by this share is told

// Says what the picture shows, for people who do not see it: "Flow at the put-in: 1,850 cfs at 07:00, ...".
std::string hydrograph_alt(const Told& told) {
  std::string words;
  const HourRow *said = nullptr, *last = nullptr;
  std::optional<Discharge> low, high;
  const auto add = [&](const HourRow& row) {
    words += (words.empty() ? "" : ", ") + say_flow(row.flow->best, told.units) + " at " + told.clock.minute(row.at);
    said = &row;
  };
  for (const HourRow& row : told.plan.hours) {
    if (!row.flow) continue;
    last = &row;
    if (!low || row.flow->low < *low) low = row.flow->low;
    if (!high || row.flow->high > *high) high = row.flow->high;
    if (said == nullptr || std::abs(row.flow->best / said->flow->best - 1.0) >= kTold) add(row);
  }
  if (last == nullptr) return "";
  if (last != said) add(*last);
  return fmt::format("Flow {}: {}; low {}, high {}.", at_spot(told) ? "there" : "at the put-in", words, flow_figure(*low, told.units),
                     say_flow(*high, told.units));
}

void add_figures(Page& page, const Told& told) {
  if (const std::string alt = hydrograph_alt(told); !alt.empty()) page.blocks.push_back(Figure{"hydrograph", alt});
  if (auto line = line_figure(told)) page.blocks.push_back(std::move(*line));
}

void add_plan(Page& page, const Told& told) {
  add_alarms(page, told);
  add_changed_since(page, told);
  page.blocks.push_back(Lines{phone_lines(told), ""});
  page.blocks.push_back(float_heading(told));
  page.blocks.push_back(Lines{{hours_line(told)}, ""});
  add_rods(page, told);
  add_reaches(page, told);
  add_changes(page, told);
  add_figures(page, told);
}

void add_no_plan(Page& page, const Told& told) {
  add_no_plan_head(page, told);
  add_changed_since(page, told);
  add_ruled_out(page, told);
}

}  // namespace

Page morning_mail(const DayPlan& plan, const DayInputs& in) {
  const Told facts = told(plan, in);
  Page page;
  page.title = mail_subject(facts);
  if (facts.floated != nullptr) {
    add_plan(page, facts);
  } else {
    add_no_plan(page, facts);
  }
  add_care(page, facts);
  add_sources(page, facts);
  add_foot(page, facts);
  return page;
}

}  // namespace floatwright
