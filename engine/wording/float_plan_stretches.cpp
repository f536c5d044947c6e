#include <fmt/format.h>

#include <algorithm>

#include "engine/river/names.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_limit.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostOthers = 3;  // next best stretches named

std::string float_words(const Told& told) {
  const PlannedStretch& s = *told.floated;
  std::string words =
      fmt::format("{} ({}) to {} ({}), {}. Put in {}, off by {}: {} on the water", typed(s.from_name),
                  say_place(s.from_place, told.in.river, told.units), typed(s.to_name),
                  say_place(s.to_place, told.in.river, told.units), say_distance(s.length, told.in.river, told.units),
                  told.clock.ten_minutes(s.launch), told.clock.ten_minutes(s.off_by), say_duration(s.on_water));
  if (in_minutes(s.shuttle) > 0.0) words += ", shuttle " + say_duration(s.shuttle) + " one way";
  words += ".";
  if (s.stop_by) words += " NO FISHING after " + told.clock.ten_minutes_before(*s.stop_by) + ": too warm for trout.";
  return words;
}

// "Cottonwood Bend (mile 38.0), wading: 07:30-12:00 and 14:10-19:00."
std::string spot_words(const Told& told) {
  const PlannedStretch& s = *told.floated;
  std::string words = fmt::format("{} ({}), {}: {}.", say_range(told, s), say_place(s.from_place, told.in.river, told.units),
                                  word_for(*s.spot), s.fished > Duration{} ? fished_hours(s, told.clock) : "no hour is named");
  if (s.stop_by) words += " NO FISHING after " + told.clock.ten_minutes_before(*s.stop_by) + ": too warm for trout.";
  return words;
}

// "12:00-14:10: more water may come from the dam."
std::vector<std::string> hours_kept_out(const Told& told, const PlannedStretch& spot) {
  std::vector<std::string> lines;
  for (const PlannedReach& hours : spot.reaches) {
    if (is_fished(hours)) continue;
    const std::string why = hours.kept_out.empty() ? "closed: " + hours.closed_why : hours.kept_out;
    lines.push_back(fmt::format("{}-{}: {}.", told.clock.ten_minutes(hours.arrive), told.clock.ten_minutes(hours.leave),
                                without_stop(typed(why))));
  }
  return lines;
}

std::string other_words(const Told& told, const PlannedStretch& s) {
  const std::string why = without_stop(typed(s.why));
  return fmt::format("{} {}, {}-{}{}.", say_range(told, s), say_distance(s.length, told.in.river, told.units),
                     told.clock.ten_minutes(s.launch), told.clock.ten_minutes(s.off_by), why.empty() ? "" : ": " + why);
}

std::vector<std::string> others(const Told& told) {
  std::vector<std::string> lines;
  for (const PlannedStretch& s : told.plan.stretches)
    if (s.verdict != Verdict::RuledOut && &s != told.floated && lines.size() < kMostOthers)
      lines.push_back(other_words(told, s));
  return lines;
}

void add_lines(Page& page, std::vector<std::string> lines, std::string label) {
  if (!lines.empty()) page.blocks.push_back(Lines{std::move(lines), std::move(label)});
}

}  // namespace

void add_stretches(Page& page, const Told& told) {
  if (at_spot(told)) {
    add_lines(page, {spot_words(told)}, "AT");
    add_why(page, told);
    add_lines(page, hours_kept_out(told, *told.floated), "NOT");
    return;
  }
  std::vector<std::string> float_lines{float_words(told)};
  for (const std::string& note : told.floated->notes) float_lines.push_back(capitalised(typed(note)));
  add_lines(page, std::move(float_lines), "FLOAT");
  add_why(page, told);
  add_lines(page, others(told), "ELSE");
  add_ruled_out(page, told);
}

void add_ruled_out(Page& page, const Told& told) {
  if (at_spot(told)) {
    add_lines(page, hours_kept_out(told, told.plan.stretches.front()), "NOT");
    return;
  }
  std::vector<std::string> reasons_in_order;
  std::vector<std::vector<std::string>> stretches;
  for (const PlannedStretch& s : told.plan.stretches) {
    if (s.verdict != Verdict::RuledOut) continue;
    const std::string why = say_why_not(s, told.in.river, told.clock, told.units);
    const auto found = std::find(reasons_in_order.begin(), reasons_in_order.end(), why);
    const auto at = static_cast<std::size_t>(found - reasons_in_order.begin());
    if (found == reasons_in_order.end()) {
      reasons_in_order.push_back(why);
      stretches.emplace_back();
    }
    stretches[at].push_back(say_range(told, s) + " " + say_distance(s.length, told.in.river, told.units));
  }
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < stretches.size(); ++i)
    lines.push_back(fmt::format("{}: {}.", joined(stretches[i]), reasons_in_order[i]));
  add_lines(page, std::move(lines), "NOT");
}

}  // namespace floatwright
