#include "engine/wording/morning_mail_subject.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include "engine/wording/cut.hpp"
#include "engine/wording/most_fished.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kSeenInAList = 40;
constexpr std::size_t kLeastName = 12, kMostName = 24;
constexpr int kWeekdayTells = 6;  // days back; before that the date does

std::string river_name(const Told& told, std::size_t most) {
  constexpr std::string_view kRiver = " River";
  std::string name = typed(told.in.river.name);
  if (name.size() > kRiver.size() && name.ends_with(kRiver)) name.resize(name.size() - kRiver.size());
  return cut_at_word(name, most);
}

std::string line_of_the_day(const Told& told) {
  const auto most = most_fished(*told.floated);
  if (!most) return "no line named";
  return say_line_briefly(told.in.tackle, most->water->choice.best->rig, told.units);
}

std::string flow_words(const Told& told) {
  const auto& flow = told.floated->flow_at_launch;
  return flow ? say_flow(flow->best, told.units) : "flow not known";
}

std::string water_words(const Told& told) {
  const auto& start = told.floated->water_at_launch;
  const auto& end = told.floated->water_at_end;
  if (!start) return "water not known";
  if (!end) return say_temperature(start->best, told.units);
  const auto [low, high] = std::minmax(start->best, end->best);
  const std::string from = temperature_figure(low, told.units), to = temperature_figure(high, told.units);
  return (from == to ? from : from + "-" + to) + " " + temperature_unit(told.units);
}

// Where the line of the day is another and a dry fly has its hours.
std::string dry_words(const Told& told) {
  const auto most = most_fished(*told.floated);
  if (!most) return "";
  const Rig& main = most->water->choice.best->rig;
  for (const PlannedReach& reach : told.floated->reaches)
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best && is_fished(reach) && water.choice.best->technique.method == Method::Dry &&
          water.choice.best->rig.line != main.line)
        return "dry from " + told.clock.ten_minutes(reach.arrive);
  return "";
}

bool forecast_alone(const DayPlan& plan) {
  return std::any_of(plan.outlooks.begin(), plan.outlooks.end(), [&](const GaugeOutlook& outlook) {
    return outlook.gauge == plan.main_gauge && outlook.method == FlowMethod::OfficialAlone;
  });
}

std::vector<std::string> alarms(const Told& told) {
  std::vector<std::string> words;
  if (told.floated->stop_by) words.push_back("TOO WARM after " + told.clock.ten_minutes_before(*told.floated->stop_by));
  const auto age = oldest_flow_age(told.plan);
  if (!age && forecast_alone(told.plan)) words.push_back("NO READING");
  if (age && *age > duration(kStaleAfter)) words.push_back("OLD READINGS (" + say_age(*age) + ")");
  return words;
}

void add_if_it_fits(std::string& subject, const std::string& between, const std::string& words) {
  if (!words.empty() && characters(subject) + characters(between) + characters(words) <= kMostSubject)
    subject += between + words;
}

std::string plan_subject(const Told& told) {
  std::string alarm;
  for (const std::string& word : alarms(told)) alarm += (alarm.empty() ? "" : ", ") + word;
  if (!alarm.empty()) alarm += ": ";
  const std::string day = day_of_week(told.plan.day), line = line_of_the_day(told);
  const std::size_t taken = characters(day) + characters(line) + std::string_view(" : ").size();
  const std::size_t left = taken < kSeenInAList ? kSeenInAList - taken : 0;
  const std::string name = river_name(told, std::clamp(left, kLeastName, kMostName));
  std::string subject = cut_at_word(alarm + day + " " + name + ": " + line, kMostSubject);
  add_if_it_fits(subject, "; ", flow_words(told));
  add_if_it_fits(subject, ", ", water_words(told));
  add_if_it_fits(subject, ", ", dry_words(told));
  return subject;
}

std::optional<Instant> newest_flow(const DayPlan& plan) {
  std::optional<Instant> newest;
  for (const NewestReading& reading : plan.readings)
    if (reading.variable == Variable::Flow && (!newest || reading.time > *newest)) newest = reading.time;
  return newest;
}

// "Tue"; of more than six days ago "3 May".
std::string since_words(const Told& told, Instant newest) {
  const std::string day = day_of_week(told.clock.day(newest));
  const std::size_t space = day.find(' ');
  const bool weekday_tells = told.plan.made_at - newest < std::chrono::days{kWeekdayTells};
  return weekday_tells ? day.substr(0, space) : day.substr(space + 1);
}

std::string why_none(const Told& told) {
  if (told.plan.nothing) {
    const auto newest = newest_flow(told.plan);
    return newest ? "gauge silent since " + since_words(told, *newest) : "no gauge gave a reading";
  }
  const auto& all = told.plan.stretches;
  const auto too_warm = [](const PlannedStretch& s) { return s.limit && s.limit->kind == LimitKind::TooWarm; };
  if (std::any_of(all.begin(), all.end(), too_warm)) return "water too warm for trout";
  return why_nothing(told);
}

}  // namespace

std::string mail_subject(const Told& told) {
  if (told.floated != nullptr) return plan_subject(told);
  const std::string day = told.plan.nothing ? "" : " " + day_of_week(told.plan.day);
  return cut_at_word("NO PLAN: " + river_name(told, kMostName) + day + ", " + why_none(told), kMostSubject);
}

}  // namespace floatwright
