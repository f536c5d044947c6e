#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "engine/trip/met_water.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_reading.hpp"
#include "engine/wording/say_river_state.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string upper_ascii(std::string text) {
  for (char& c : text)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return text;
}

std::string sun_words(const Told& told) {
  if (!told.plan.sun_known) return told.plan.sun_why.empty() ? "" : "sun not known: " + typed(told.plan.sun_why);
  return "sun " + told.clock.minute(told.plan.sunrise) + "-" + told.clock.minute(told.plan.sunset);
}

// Common practice, no source; the steps are those at which the methods' worth changes.
const char* colour_words(double fnu) {
  if (fnu < 5.0) return "Clear";
  if (fnu < 15.0) return "A little off colour";
  return fnu < 30.0 ? "Off colour" : "Dirty";
}

// "rising from about 18:00": where a daily wave is lowest at the put-in in the rest of the day.
std::string wave_words(const Told& told) {
  const GaugeOutlook* outlook = main_outlook(told.plan);
  if (outlook == nullptr || outlook->state != FlowState::DailyWave || told.plan.course.empty()) return "";
  const FlowRow* lowest = nullptr;
  for (const FlowRow& row : told.plan.course)
    if (row.flow && row.at >= told.floated->launch && (lowest == nullptr || row.flow->best < lowest->flow->best)) lowest = &row;
  if (lowest == nullptr || lowest == &told.plan.course.back()) return "";
  return ", rising from about " + told.clock.ten_minutes(lowest->at);
}

// Where no line is named no hour is.
std::string hours_words(const Told& told) {
  const PlannedStretch& s = *told.floated;
  if (s.spot) return s.fished > Duration{} ? "FISH " + fished_hours(s, told.clock) : "NO HOUR NAMED";
  return fmt::format("PUT IN {}   OFF BY {}", told.clock.ten_minutes(s.launch), told.clock.ten_minutes(s.off_by));
}

// "rising about 12:40": the first rise of a dam's release, else the first drop, that is met at a place of the float in its
// hours.
std::string front_words(const Told& told) {
  const Caution* first = nullptr;
  for (const Caution& c : told.floated->cautions) {
    const bool front = c.kind == CautionKind::DamRise || c.kind == CautionKind::DamDrop;
    if (!front || !c.at) continue;
    const bool sooner = first == nullptr || (c.kind == first->kind ? *c.at < *first->at : c.kind == CautionKind::DamRise);
    if (sooner) first = &c;
  }
  if (first == nullptr) return "";
  return (first->kind == CautionKind::DamRise ? ", rising about " : ", falling about ") +
         told.clock.ten_minutes(*first->at);
}

std::string what_to_do(const Told& told) {
  if (told.plan.nothing)
    return "Look at the gauge yourself (board, telephone, the agency's page) and fetch again; without a flow no depth, "
           "speed or line is named.";
  return "Look again in the morning. A limit is yours to look at in river.json and settings.json; the river's own are "
         "not.";
}

std::string river_words(const Told& told) {
  return (told.floated->flow_at_launch ? "River " : "River: flow ") + flow_and_trend(told);
}

void add_doubts(Page& page, const Told& told) {
  if (const auto lines = doubts(told); !lines.empty()) page.blocks.push_back(Lines{lines, ""});
}

}  // namespace

std::string say_boat(const Told& told) {
  const Settings& settings = told.in.settings;
  const std::string boat = typed(settings.boat_of_several), guide = typed(settings.who);
  const std::size_t anglers = settings.preferences.anglers.size();
  const std::string people = anglers == 0 ? "" : fmt::format("{} angler{}", anglers, anglers == 1 ? "" : "s");
  const auto with = [](const std::string& a, const char* between, const std::string& b) {
    return a.empty() || b.empty() ? a + b : a + between + b;
  };
  return with(boat, "   ", with(guide, boat.empty() ? "   " : ", ", people));
}

std::string hours_line(const Told& told) {
  const std::string boat = say_boat(told);
  std::string line = (boat.empty() ? "" : boat + "   ") + hours_words(told);
  const std::string sun = sun_words(told);
  return sun.empty() ? line : line + "   " + sun;
}

std::string flow_and_trend(const Told& told) {
  const GaugeOutlook* outlook = main_outlook(told.plan);
  const std::string trend =
      (outlook == nullptr ? "" : ", " + say_trend(*outlook, told.in.river.snow_fed)) + front_words(told) + wave_words(told);
  const auto& flow = told.floated->flow_at_launch;
  if (!flow) return "not known (" + without_stop(typed(flow.why_absent())) + ")" + trend;
  return say_flow(*flow, told.units) + trend;
}

std::string water_temperature(const Told& told) {
  const auto& start = told.floated->water_at_launch;
  const auto& end = told.floated->water_at_end;
  if (!start)
    return fmt::format("Water temperature not known: measure {} and at noon", at_spot(told) ? "when you come" : "at the put-in");
  std::string words = "Water " + say_temperature(start->best, told.units);
  if (end && temperature_figure(start->best, told.units) != temperature_figure(end->best, told.units))
    words +=
        fmt::format(", {} by {}", say_temperature(end->best, told.units), told.clock.ten_minutes(told.floated->end));
  return words;
}

// Seen by the guide before measured by a sensor: the newest one on the river.
std::string water_clarity(const Told& told) {
  const auto& seen = told.in.settings.visibility;
  if (seen && *seen > Length{}) return "Clear to about " + say_length(*seen, told.units);
  const NewestReading* newest = nullptr;
  for (const NewestReading& reading : told.plan.readings) {
    const bool fresh = told.plan.made_at - reading.time <= kClarityHolds;
    if (reading.variable == Variable::Clarity && reading.si && fresh && (newest == nullptr || reading.time > newest->time))
      newest = &reading;
  }
  if (newest == nullptr) return "Clarity not known";
  return fmt::format("{} (turbidity {})", colour_words(*newest->si), say_value(*newest, told.units));
}

std::optional<Duration> oldest_flow_age(const DayPlan& plan) {
  std::optional<Duration> oldest;
  for (const NewestReading& reading : plan.readings) {
    if (reading.variable != Variable::Flow) continue;
    const Duration age = duration(plan.made_at - reading.time);
    if (!oldest || age > *oldest) oldest = age;
  }
  return oldest;
}

std::vector<std::string> doubts(const Told& told) {
  std::vector<std::string> lines;
  const auto age = oldest_flow_age(told.plan);
  if (age && *age > duration(kStaleAfter))
    lines.push_back("OLD READINGS (" + say_age(*age) + "): look at the gauge before you " +
                    (at_spot(told) ? "go in." : "launch."));
  std::vector<std::string> missing;
  for (const std::string& gauge : told.plan.missing_gauges) missing.push_back(typed(gauge));
  if (!missing.empty()) lines.push_back("NO READING of " + joined(missing) + ": what hangs on it is less sure.");
  if (!told.clock.known())
    lines.push_back("TIMES ARE UTC: the zone \"" + typed(told.plan.time_zone) + "\" is not known here.");
  return lines;
}

std::string why_nothing(const Told& told) {
  if (told.plan.nothing) return "no gauge gave a reading";
  if (!told.plan.why_no_stretch.empty()) return without_stop(typed(told.plan.why_no_stretch));
  if (at_spot(told)) return without_stop(typed(told.plan.stretches.front().why));
  return "every stretch breaks a limit";
}

Heading float_heading(const Told& told) {
  const PlannedStretch& floated = *told.floated;
  const std::string route = say_range(told, floated) + "  " +
                            (floated.spot ? say_place(floated.from_place, told.in.river, told.units)
                                          : say_distance(floated.length, told.in.river, told.units));
  return {upper_ascii(typed(told.in.river.name)) + "  " + route, head_of_day(told.plan.day), 1};
}

void add_head(Page& page, const Told& told) {
  page.blocks.push_back(float_heading(told));
  page.blocks.push_back(Lines{{hours_line(told), river_words(told) + ".", water_temperature(told) + ". " + water_clarity(told) + "."}, ""});
  add_doubts(page, told);
}

void add_no_plan_head(Page& page, const Told& told) {
  page.blocks.push_back(Heading{"NO PLAN: " + typed(told.in.river.name), head_of_day(told.plan.day), 1});
  if (!told.in.settings.boat_of_several.empty()) page.blocks.push_back(Lines{{say_boat(told)}, "BOAT"});
  page.blocks.push_back(Lines{{capitalised(why_nothing(told)) + "."}, "WHY"});
  page.blocks.push_back(Lines{{what_to_do(told)}, "DO"});
  const GaugeOutlook* outlook = main_outlook(told.plan);
  if (outlook != nullptr && outlook->now)
    page.blocks.push_back(Lines{{say(*outlook, state_words(told)) + "."}, "RIVER"});
  add_doubts(page, told);
}

}  // namespace floatwright
