#include "engine/trip/season.hpp"

namespace floatwright {
namespace {

int order(MonthDay day) { return 100 * day.month + day.day; }

}  // namespace

bool in_season(const Season& season, std::chrono::year_month_day day) {
  const int today = order({static_cast<int>(unsigned(day.month())), static_cast<int>(unsigned(day.day()))});
  const int from = order(season.from), to = order(season.to);
  return from <= to ? from <= today && today <= to : today >= from || today <= to;
}

bool in_hours(const HoursOfDay& hours, Duration t) {
  return hours.from <= hours.to ? hours.from <= t && t <= hours.to : t >= hours.from || t <= hours.to;
}

bool meet_hours(const HoursOfDay& hours, Duration begin, Duration end) {
  if (in_hours(hours, begin) || in_hours(hours, end)) return true;
  return end < begin ? hours.from >= begin || hours.from <= end : begin <= hours.from && hours.from <= end;
}

}  // namespace floatwright
