#include "engine/forecast/local_clock.hpp"

#include <date/tz.h>

#include <stdexcept>
#include <utility>

namespace floatwright {
namespace {

const date::time_zone* zone_or_utc(const std::string& name) {
  try {
    return date::locate_zone(name);
  } catch (const std::runtime_error&) {
    return date::locate_zone("Etc/UTC");
  }
}

date::local_seconds wall_clock(Instant t, const std::string& zone) { return zone_or_utc(zone)->to_local(t); }

std::pair<int, int> month_and_day(Instant t, const std::string& zone) {
  const date::year_month_day day{date::floor<date::days>(wall_clock(t, zone))};
  return {static_cast<int>(unsigned{day.month()}), static_cast<int>(unsigned{day.day()})};
}

}  // namespace

bool zone_known(const std::string& time_zone) {
  try {
    return date::locate_zone(time_zone) != nullptr;
  } catch (const std::runtime_error&) {
    return false;
  }
}

Instant same_hour_before(Instant t, int days, const std::string& time_zone) {
  const date::local_seconds earlier = wall_clock(t, time_zone) - date::days{days};
  return std::chrono::floor<std::chrono::seconds>(zone_or_utc(time_zone)->to_sys(earlier, date::choose::earliest));
}

Instant shown_at(Instant t, const std::string& time_zone) {
  return Instant{wall_clock(t, time_zone).time_since_epoch()};
}

Instant start_of_day(std::chrono::sys_days date, const std::string& time_zone) {
  const date::local_seconds midnight{date.time_since_epoch()};
  return std::chrono::floor<std::chrono::seconds>(zone_or_utc(time_zone)->to_sys(midnight, date::choose::earliest));
}

std::string hour_and_day(Instant t, const std::string& time_zone) {
  return date::format("%H:%M", wall_clock(t, time_zone)) + (zone_known(time_zone) ? "" : " UTC") +
         date::format(" on %a %e %b", wall_clock(t, time_zone));
}

bool weekend(Instant t, const std::string& time_zone) {
  const date::weekday day{date::floor<date::days>(wall_clock(t, time_zone))};
  return day == date::Saturday || day == date::Sunday;
}

bool in_season(const Season& season, Instant t, const std::string& time_zone) {
  const auto day = month_and_day(t, time_zone);
  const std::pair from{season.from.month, season.from.day}, to{season.to.month, season.to.day};
  if (from <= to) return from <= day && day <= to;
  return day >= from || day <= to;
}

}  // namespace floatwright
