#include "engine/wording/clock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "engine/trip/local_time.hpp"

namespace floatwright {
namespace {

using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::array kWeekdays{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"};
constexpr std::array kMonths{"January", "February", "March",     "April",   "May",      "June",
                             "July",    "August",   "September", "October", "November", "December"};

std::string weekday_name(year_month_day day) { return kWeekdays.at(std::chrono::weekday{sys_days{day}}.c_encoding()); }

std::string month_name(year_month_day day) { return kMonths.at(static_cast<unsigned>(day.month()) - 1U); }

std::string clock_face(Instant local) {
  const auto since_midnight = local - std::chrono::floor<std::chrono::days>(local);
  const auto whole = std::chrono::floor<minutes>(since_midnight).count();
  return fmt::format("{:02}:{:02}", whole / 60, whole % 60);
}

constexpr Period kTen = minutes{10};

}  // namespace

LocalClock::LocalClock(std::string zone) : zone_(std::move(zone)), known_(known_zone(zone_)) {}

Period LocalClock::offset(Instant t) const {
  return sys_days{local_date(t, zone_)} + period(time_of_day(t, zone_)) - t;
}

std::string LocalClock::minute(Instant t) const { return clock_face(t + offset(t)) + (known_ ? "" : " UTC"); }

std::string LocalClock::ten_minutes_before(Instant t) const {
  const Instant local = t + offset(t);
  const Period over = (local - std::chrono::floor<std::chrono::days>(local)) % kTen;
  return minute(t - over);
}

std::string LocalClock::ten_minutes(Instant t) const { return ten_minutes_before(t + kTen / 2); }

std::string LocalClock::ten_minutes_after(Instant t) const { return ten_minutes_before(t + kTen - Period{1}); }

year_month_day LocalClock::day(Instant t) const { return local_date(t, zone_); }

std::string LocalClock::minute_seen_from(Instant t, year_month_day seen_from) const {
  const auto back = sys_days{seen_from} - sys_days{day(t)};
  if (back.count() == 0) return minute(t);
  if (back.count() == 1) return minute(t) + " the day before";
  return minute(t) + " on " + short_day(day(t));
}

std::string LocalClock::written(Instant t) const {
  const Period shift = offset(t);
  const Instant local = t + shift;
  const year_month_day date{std::chrono::floor<std::chrono::days>(local)};
  const auto second = (local.time_since_epoch().count() % 60 + 60) % 60;
  const auto away = std::chrono::floor<minutes>(std::chrono::abs(shift)).count();
  return fmt::format("{:04}-{:02}-{:02}T{}:{:02}{}{:02}:{:02}", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), clock_face(local), second,
                     shift < Period{0} ? '-' : '+', away / 60, away % 60);
}

std::string short_day(year_month_day day) {
  if (!day.ok()) return "?";
  return fmt::format("{} {} {}", static_cast<unsigned>(day.day()), month_name(day), static_cast<int>(day.year()));
}

std::string say_day(year_month_day day) {
  if (!day.ok()) return "?";
  return weekday_name(day) + " " + short_day(day);
}

std::string day_of_week(year_month_day day) {
  if (!day.ok()) return "?";
  return fmt::format("{} {} {}", weekday_name(day).substr(0, 3), static_cast<unsigned>(day.day()),
                     month_name(day).substr(0, 3));
}

std::string head_of_day(year_month_day day) {
  if (!day.ok()) return "?";
  std::string head = fmt::format("{} {} {} {}", weekday_name(day).substr(0, 3), static_cast<unsigned>(day.day()),
                                 month_name(day).substr(0, 3), static_cast<int>(day.year()));
  std::transform(head.begin(), head.end(), head.begin(), [](unsigned char c) { return std::toupper(c); });
  return head;
}

}  // namespace floatwright
