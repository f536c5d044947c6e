#include "adapters/out/calendar/reminders.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/say_caution.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr Period kBeforeAStop = std::chrono::minutes{15};  // judgement: a boat runs ahead of its timetable

std::string stop_words(const Told& told, const PlannedReach& reach) {
  std::string words = reach.stop_sentence.empty() ? "STOP ABOVE. PORTAGE." : typed(reach.stop_sentence);
  if (reach.stop_time) words += " " + say_duration(*reach.stop_time);
  return told.clock.ten_minutes_before(reach.leave) + " " + words;
}

void add_stops(std::vector<Reminder>& all, const Told& told) {
  for (const PlannedReach& reach : told.floated->reaches) {
    if (!reach.portage_at_end && reach.stop_sentence.empty()) continue;
    all.push_back({reach.leave - kBeforeAStop, stop_words(told, reach), false});
  }
}

void add_releases(std::vector<Reminder>& all, const Told& told) {
  const CautionWords words{told.in.river, told.clock, told.units};
  for (const Caution& caution : told.floated->cautions) {
    const auto earliest = caution.from ? caution.from : caution.at;
    const bool met = earliest && *earliest < told.floated->off_by;
    if (caution.kind == CautionKind::DamRise && met) all.push_back({*earliest, say(caution, words), true});
  }
}

void add_heat_stop(std::vector<Reminder>& all, const Told& told) {
  if (const auto& by = told.floated->stop_by)
    all.push_back({*by, told.clock.ten_minutes_before(*by) + " NO FISHING after this: too warm for trout.", false});
}

void add_off_by(std::vector<Reminder>& all, const Told& told) {
  const Settings& settings = told.in.settings;
  std::string words = told.clock.ten_minutes(told.floated->off_by) + " OFF THE WATER";
  if (!settings.ashore_contact.empty()) words += ": tell " + typed(settings.ashore_contact);
  if (!settings.ashore_phone.empty()) words += ", " + typed(settings.ashore_phone);
  all.push_back({told.floated->off_by, words, false});
}

}  // namespace

std::vector<Reminder> reminders(const Told& told) {
  std::vector<Reminder> all;
  if (told.floated == nullptr) return all;
  add_stops(all, told);
  add_releases(all, told);
  add_heat_stop(all, told);
  add_off_by(all, told);
  std::stable_sort(all.begin(), all.end(), [](const Reminder& a, const Reminder& b) { return a.at < b.at; });
  return all;
}

}  // namespace floatwright
