#include "engine/wording/float_plan.hpp"

#include <algorithm>

#include "engine/river/names.hpp"
#include "engine/wording/changed_since.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

std::string day_word(const Told& told) {
  if (!told.plan.day.ok()) return "the day";
  const auto ahead = std::chrono::sys_days{told.plan.day} - std::chrono::sys_days{told.clock.day(told.plan.made_at)};
  if (ahead.count() == 0) return "today";
  return ahead.count() == 1 ? "tomorrow" : say_day(told.plan.day);
}

}  // namespace

Told told(const DayPlan& plan, const DayInputs& in) {
  Told out{plan, in, in.settings.units, LocalClock(plan.time_zone), nullptr, {}, ""};
  out.day_word = day_word(out);
  const auto found = std::find_if(plan.stretches.begin(), plan.stretches.end(),
                                  [](const PlannedStretch& s) { return s.verdict != Verdict::RuledOut; });
  if (found == plan.stretches.end() || plan.nothing) return out;
  out.floated = &*found;
  out.rods = rods_of_the_day(*found, in.tackle);
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
    out += words[i];
  }
  return out;
}

bool at_spot(const Told& told) { return !told.plan.stretches.empty() && told.plan.stretches.front().spot; }

std::string aboard(const Told& told) { return at_spot(told) ? "" : " aboard"; }

std::string not_at_hand(const Told& told) { return at_spot(told) ? " (its rod stays at home)" : " (its rod is not in the boat)"; }

std::string fished_hours(const PlannedStretch& spot, const LocalClock& clock) {
  std::vector<std::string> spans;
  const PlannedReach* first = nullptr;
  const PlannedReach* last = nullptr;
  const auto end_span = [&] {
    if (first != nullptr) spans.push_back(clock.ten_minutes(first->arrive) + "-" + clock.ten_minutes(last->leave));
    first = nullptr;
  };
  for (const PlannedReach& hours : spot.reaches) {
    if (!is_fished(hours)) {
      end_span();
      continue;
    }
    if (first == nullptr) first = &hours;
    last = &hours;
  }
  end_span();
  return joined(spans);
}

std::string say_range(const Told&, const PlannedStretch& stretch) {
  if (stretch.spot) return typed(stretch.from_name.empty() ? stretch.from : stretch.from_name);
  return typed(stretch.from_name.empty() ? stretch.from : stretch.from_name) + " -> " +
         typed(stretch.to_name.empty() ? stretch.to : stretch.to_name);
}

std::string name_of(const PlannedReach& reach) { return typed(reach.name.empty() ? reach.id : reach.name); }

std::string at_reach(const PlannedReach& reach) { return (reach.named ? "at " : "") + name_of(reach); }

std::string at_water(const PlannedReach& reach, const PlannedWater& water) {
  const std::string kind = reach.waters.size() > 1 ? " (" + std::string(word_for(water.type)) + ")" : "";
  return at_reach(reach) + kind;
}

const GaugeOutlook* main_outlook(const DayPlan& plan) {
  const auto found = std::find_if(plan.outlooks.begin(), plan.outlooks.end(),
                                  [&](const GaugeOutlook& o) { return o.gauge == plan.main_gauge; });
  return found == plan.outlooks.end() ? nullptr : &*found;
}

namespace {

Page plan_page(const Told& told) {
  Page page;
  add_head(page, told);
  add_changed_since(page, told);
  add_stretches(page, told);
  add_rods(page, told);
  add_reaches(page, told);
  add_changes(page, told);
  add_also(page, told);
  add_hours(page, told);
  add_ifs(page, told);
  add_care(page, told);
  add_sources(page, told);
  add_foot(page, told);
  add_log_boxes(page, told);
  return page;
}

// Nothing to float: what is known is still said, and what to do.
Page no_plan_page(const Told& told) {
  Page page;
  add_no_plan_head(page, told);
  add_changed_since(page, told);
  add_ruled_out(page, told);
  add_hours(page, told);
  add_care(page, told);
  add_sources(page, told);
  add_foot(page, told);
  return page;
}

}  // namespace

Page float_plan(const DayPlan& plan, const DayInputs& in) {
  const Told facts = told(plan, in);
  Page page = facts.floated != nullptr ? plan_page(facts) : no_plan_page(facts);
  page.title = typed(in.river.name) + ", " + say_day(plan.day);
  return page;
}

}  // namespace floatwright
