#include "engine/wording/rig_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/line_words.hpp"
#include "engine/wording/say_reading.hpp"
#include "engine/wording/sheet_stretch.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostRows = 8;
constexpr std::size_t kMostWatched = 5;  // heaviest first; more are not read at five in the morning

std::string counted(std::size_t count, const std::string& word) {
  return fmt::format("{} {}{}", count, word, count == 1 ? "" : word.ends_with("ch") ? "es" : "s");
}

void add_left_out(Page& page, const SheetStretch& sheet) {
  std::vector<std::string> parts;
  if (sheet.waters_left_out > 0) parts.push_back(counted(sheet.waters_left_out, "lesser water") + " left out");
  if (sheet.reaches_left_out > 0) parts.push_back(counted(sheet.reaches_left_out, "reach") + " left out");
  if (sheet.techniques_put_together > 0) parts.push_back("neighbours on one rig told as the one fished longer");
  if (!parts.empty()) page.blocks.push_back(Lines{{capitalised(joined(parts)) + ": see the plan."}, ""});
}

void add_rows(Page& page, const Told& told) {
  const SheetStretch sheet = sheet_stretch(*told.floated, told.in.tackle, kMostRows);
  Told short_told = told;
  short_told.floated = &sheet.stretch;
  add_reaches(page, short_told);
  add_left_out(page, sheet);
}

// Of "works at the bank; spawning fish".
bool is_a_reason(const std::string& text, const std::string& reasons) {
  return ("; " + reasons + "; ").find("; " + text + "; ") != std::string::npos;
}

// A closed reach has its row, with why.
bool has_a_row(const Caution& c, const PlannedStretch& stretch) {
  return c.kind == CautionKind::Closure && !c.text.empty() &&
         std::any_of(stretch.reaches.begin(), stretch.reaches.end(),
                     [&](const PlannedReach& reach) { return is_a_reason(c.text, reach.closed_why); });
}

// The plan's cautions, heaviest first; how old the rules are is said under RULES, what is closed in its row.
void add_watch(Page& page, const Told& told) {
  DayPlan plan = told.plan;
  std::erase_if(plan.cautions, [](const Caution& c) { return c.kind == CautionKind::RulesOld; });
  PlannedStretch floated;
  if (told.floated != nullptr) {
    floated = *told.floated;
    std::erase_if(floated.cautions, [&](const Caution& c) { return has_a_row(c, floated); });
  }
  const Told without_rules{
      plan, told.in, told.units, told.clock, told.floated != nullptr ? &floated : nullptr, told.rods, told.day_word};
  std::vector<std::string> lines = care_lines(without_rules, true);
  if (lines.size() > kMostWatched) {
    const std::size_t more = lines.size() - kMostWatched;
    lines.resize(kMostWatched);
    lines.push_back(fmt::format("And {} more: see the plan.", more));
  }
  page.blocks.push_back(Lines{lines, "WATCH"});
}

void add_rules(Page& page, const Told& told) {
  const auto& looked_up = told.in.river.rules_checked_on;
  std::string line = "The law, the agency and the guide on the water come before this sheet. ";
  if (looked_up && looked_up->ok()) {
    const bool on_the_day = *looked_up == told.plan.day;
    line += "Rules last looked up " + short_day(*looked_up) + (on_the_day ? "." : ": CHECK AGAIN TODAY.");
  } else {
    line += "Nobody noted when the rules were looked up: CHECK TODAY.";
  }
  page.blocks.push_back(Lines{{line}, "RULES"});
  if (!told.in.settings.emergency.empty()) page.blocks.push_back(Lines{{typed(told.in.settings.emergency)}, "HELP"});
}

std::string main_reading(const Told& told) {
  const DayPlan& plan = told.plan;
  for (std::size_t i = 0; i < plan.readings.size() && i < plan.reading_gauges.size(); ++i) {
    const NewestReading& reading = plan.readings[i];
    if (plan.reading_gauges[i] != plan.main_gauge || reading.variable != Variable::Flow) continue;
    return fmt::format("Gauge {}: {}, {}.", typed(plan.main_gauge), say_value(reading, told.units),
                       say_when(reading, plan.made_at, plan.day, told.clock));
  }
  return "No flow was read.";
}

std::string bands(const Told& told) {
  for (const PlannedReach& reach : told.floated->reaches)
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best && water.choice.best->technique.method != Method::Dry) {
        const Band<Length>& fly = water.choice.best->fly_depth;
        return fmt::format(" A fly told at {} may be at {} {}.", say_length(fly.best, told.units),
                           length_range_figure(fly.low, fly.high, told.units), length_unit(told.units));
      }
  return "";
}

// By what was logged since the notes.
bool is_corrected(const Told& told) {
  for (const PlannedReach& reach : told.floated->reaches)
    for (const PlannedWater& water : reach.waters)
      if (water.depth_met.entries > 0) return true;
  return false;
}

void add_from(Page& page, const Told& told) {
  std::string made =
      fmt::format("Made {} {}.", told.clock.minute(told.plan.made_at), day_of_week(told.clock.day(told.plan.made_at)));
  if (told.floated != nullptr)
    made += fmt::format(" Depths from your notes{}, at the hour's flow; ~ a guess.{}",
                        is_corrected(told) ? " and log" : "", bands(told));
  page.blocks.push_back(Lines{{main_reading(told), made}, "FROM"});
}

void add_pencil(Page& page, const Told& told) {
  page.blocks.push_back(
      PencilBoxes{{"where", "hour", "depth", "bottom Y/N", "rod", "water " + temperature_unit(told.units)}});
}

}  // namespace

Page rig_sheet(const DayPlan& plan, const DayInputs& in) {
  const Told facts = told(plan, in);
  Page page;
  page.title = typed(in.river.name) + ", rig sheet, " + say_day(plan.day);
  if (facts.floated == nullptr) {
    add_no_plan_head(page, facts);
  } else {
    add_head(page, facts);
    add_rods(page, facts, true);
    add_rows(page, facts);
  }
  add_watch(page, facts);
  add_rules(page, facts);
  add_from(page, facts);
  if (auto picture = line_figure(facts)) page.blocks.push_back(*std::move(picture));
  if (facts.floated != nullptr) add_pencil(page, facts);
  return page;
}

}  // namespace floatwright
