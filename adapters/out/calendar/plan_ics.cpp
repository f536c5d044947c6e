#include "adapters/out/calendar/plan_ics.hpp"

#include <fmt/format.h>
#include <libical/ical.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <memory>

#include "adapters/out/calendar/day_entry.hpp"
#include "adapters/out/calendar/reminders.hpp"

namespace floatwright {
namespace {

struct Freed {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
  void operator()(char* text) const { icalmemory_free_buffer(text); }
};
using Component = std::unique_ptr<icalcomponent, Freed>;

icaltimetype utc(Instant t) {
  return icaltime_from_timet_with_zone(t.time_since_epoch().count(), 0, icaltimezone_get_utc_timezone());
}

icaltimetype whole_day(std::chrono::year_month_day day) {
  icaltimetype date = icaltime_null_date();
  date.year = static_cast<int>(day.year());
  date.month = static_cast<int>(static_cast<unsigned>(day.month()));
  date.day = static_cast<int>(static_cast<unsigned>(day.day()));
  return date;
}

// FNV-1a over 64 bits (constants from memory): short, and the same on every machine and in every later version.
std::uint64_t fnv1a(const std::string& text) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  return hash;
}

std::string uid(const DayPlan& plan, const DayInputs& in) {
  const Settings& settings = in.settings;
  const std::string whose = settings.boat_of_several.empty() ? settings.who + '\n' + settings.boat
                                                             : "of several\n" + settings.boat_of_several;
  std::string key = in.river.name + '\n' + whose;
  if (in.spot) key += "\nat " + in.river.spots.at(*in.spot).id;  // stands beside the float of that day
  return fmt::format("float-{:04}-{:02}-{:02}-{:016x}", static_cast<int>(plan.day.year()),
                     static_cast<unsigned>(plan.day.month()), static_cast<unsigned>(plan.day.day()), fnv1a(key));
}

// Minutes since 1970: a later plan's is greater, and 31 bits last until the year 6053.
int sequence(Instant made_at) {
  const auto minutes = std::chrono::floor<std::chrono::minutes>(made_at.time_since_epoch()).count();
  return static_cast<int>(std::clamp<std::int64_t>(minutes, 0, std::numeric_limits<int>::max()));
}

const Access* put_in(const Told& told) {
  const auto& accesses = told.in.river.accesses;
  const auto found = std::find_if(accesses.begin(), accesses.end(),
                                  [&](const Access& access) { return access.id == told.floated->from; });
  return found == accesses.end() ? nullptr : &*found;
}

void put_hours(icalcomponent* event, const Told& told) {
  icalcomponent_add_property(event, icalproperty_new_dtstart(utc(told.floated->launch)));
  icalcomponent_add_property(event, icalproperty_new_dtend(utc(told.floated->off_by)));
}

void put_where(icalcomponent* event, const Told& told, const DayEntry& entry) {
  icalcomponent_add_property(event, icalproperty_new_location(entry.location.c_str()));
  const Access* access = put_in(told);
  if (access == nullptr || !access->at) return;
  const icalgeotype at{access->at->latitude_deg, access->at->longitude_deg};
  if (std::isfinite(at.lat) && std::isfinite(at.lon)) icalcomponent_add_property(event, icalproperty_new_geo(at));
}

void put_reminder(icalcomponent* event, const Reminder& reminder, Instant launch) {
  const auto ahead = std::chrono::floor<std::chrono::minutes>(reminder.at - launch);
  icalcomponent* alarm = icalcomponent_new_valarm();
  icaltriggertype trigger{};
  trigger.time = icaltime_null_time();
  trigger.duration = icaldurationtype_from_int(static_cast<int>(Period{ahead}.count()));
  icalcomponent_add_property(alarm, icalproperty_new_action(ICAL_ACTION_DISPLAY));
  icalcomponent_add_property(alarm, icalproperty_new_trigger(trigger));
  icalcomponent_add_property(alarm, icalproperty_new_description(reminder.text.c_str()));
  icalcomponent_add_component(event, alarm);
}

icalcomponent* event_of(const Told& told) {
  const DayEntry entry = day_entry(told);
  icalcomponent* event = icalcomponent_new_vevent();
  const auto put = [event](icalproperty* property) { icalcomponent_add_property(event, property); };
  put(icalproperty_new_uid(uid(told.plan, told.in).c_str()));
  put(icalproperty_new_dtstamp(utc(told.plan.made_at)));
  put(icalproperty_new_sequence(sequence(told.plan.made_at)));
  put(icalproperty_new_summary(entry.title.c_str()));
  if (told.floated == nullptr) {
    put(icalproperty_new_dtstart(whole_day(told.plan.day)));
    put(icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
  } else {
    put_hours(event, told);
    put_where(event, told, entry);
    put(icalproperty_new_status(told.plan.stale ? ICAL_STATUS_TENTATIVE : ICAL_STATUS_CONFIRMED));
  }
  put(icalproperty_new_description(entry.text.c_str()));
  for (const Reminder& reminder : reminders(told)) put_reminder(event, reminder, told.floated->launch);
  return event;
}

Component empty_calendar() {
  Component calendar{icalcomponent_new_vcalendar()};
  icalcomponent_add_property(calendar.get(), icalproperty_new_version("2.0"));
  icalcomponent_add_property(calendar.get(), icalproperty_new_prodid("-//floatwright//float plan//EN"));
  return calendar;
}

std::string text_of(const Component& calendar) {
  const std::unique_ptr<char, Freed> text{icalcomponent_as_ical_string_r(calendar.get())};
  return text.get();
}

}  // namespace

std::string plan_ics(const DayPlan& plan, const DayInputs& in) {
  const Component calendar = empty_calendar();
  icalcomponent_add_component(calendar.get(), event_of(told(plan, in)));
  return text_of(calendar);
}

std::string plan_ics(const std::vector<BoatDay>& boats) {
  const Component calendar = empty_calendar();
  for (const BoatDay& boat : boats) icalcomponent_add_component(calendar.get(), event_of(told(boat.plan, boat.in)));
  return text_of(calendar);
}

}  // namespace floatwright
