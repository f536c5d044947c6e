#include "engine/trip/local_time.hpp"

#include <date/tz.h>

#include <stdexcept>

namespace floatwright {
namespace {

const date::time_zone* find_zone(const std::string& zone) {
  try {
    return date::locate_zone(zone);
  } catch (const std::runtime_error&) {
    return nullptr;
  }
}

const date::time_zone& zone_or_utc(const std::string& zone) {
  const date::time_zone* found = find_zone(zone);
  return found != nullptr ? *found : *date::locate_zone("UTC");
}

date::local_seconds midnight(std::chrono::year_month_day day) {
  return date::local_seconds{std::chrono::sys_days{day}.time_since_epoch()};
}

}  // namespace

bool known_zone(const std::string& zone) { return find_zone(zone) != nullptr; }

Instant at_local(std::chrono::year_month_day day, Duration time_of_day, const std::string& zone) {
  return zone_or_utc(zone).to_sys(midnight(day) + period(time_of_day), date::choose::earliest);
}

LocalDay local_day(std::chrono::year_month_day day, const std::string& zone) {
  const std::chrono::year_month_day next{std::chrono::sys_days{day} + std::chrono::days{1}};
  return {at_local(day, Duration{}, zone), at_local(next, Duration{}, zone)};
}

std::chrono::year_month_day local_date(Instant t, const std::string& zone) {
  const auto local = zone_or_utc(zone).to_local(t).time_since_epoch();
  return std::chrono::sys_days{std::chrono::floor<std::chrono::days>(local)};
}

Duration time_of_day(Instant t, const std::string& zone) {
  const auto local = zone_or_utc(zone).to_local(t).time_since_epoch();
  return duration(local - std::chrono::floor<std::chrono::days>(local));
}

std::chrono::year_month_day default_day(Instant now, const std::string& zone, Duration day_turns_at) {
  const auto today = local_date(now, zone);
  if (time_of_day(now, zone) < day_turns_at) return today;
  return std::chrono::sys_days{today} + std::chrono::days{1};
}

}  // namespace floatwright
