#include "engine/wording/left_ashore.hpp"

#include <fmt/format.h>

#include "engine/river/names.hpp"
#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

// Beyond the hour off the water and the drive: loading the boat and getting to where a telephone works. Judgement.
constexpr Duration kGrace = hours(1.0);

std::string or_blank(const std::string& text) { return text.empty() ? "______________________" : typed(text); }

std::string with_phone(const std::string& name, const std::string& phone) {
  return or_blank(name) + ", phone " + or_blank(phone);
}

std::vector<std::string> persons(const Told& told) {
  const Settings& settings = told.in.settings;
  std::vector<std::string> lines{with_phone(settings.who, settings.phone)};
  for (const Angler& angler : settings.preferences.anglers)
    if (angler.name != settings.who) lines.push_back(with_phone(angler.name, ""));
  return lines;
}

const Access* access(const River& river, const std::string& id) {
  for (const Access& a : river.accesses)
    if (a.id == id) return &a;
  return nullptr;
}

std::string place_words(const Told& told, const std::string& id, const std::string& name) {
  const Access* a = access(told.in.river, id);
  std::string words = or_blank(name.empty() ? id : name);
  if (a != nullptr && a->at) words += fmt::format(" ({:.5f}, {:.5f})", a->at->latitude_deg, a->at->longitude_deg);
  return words;
}

std::vector<std::string> water_lines(const Told& told) {
  const PlannedStretch& s = *told.floated;
  std::vector<std::string> lines;
  lines.push_back(std::string(s.spot ? "At the first hour" : "At launch") + ": flow " + (s.flow_at_launch ? say_flow(*s.flow_at_launch, told.units) : "not known") +
                  ", water " +
                  (s.water_at_launch ? say_temperature(s.water_at_launch->best, told.units) : "temperature not known") +
                  ".");
  for (const GaugeOutlook& outlook : told.plan.outlooks)
    if (outlook.now)
      lines.push_back(fmt::format("Gauge {}: {} at {}.", typed(outlook.gauge), say_flow(*outlook.now, told.units),
                                  told.clock.minute_seen_from(outlook.now_at, told.plan.day)));
  return lines;
}

std::string call_words(const Told& told) {
  const PlannedStretch& s = *told.floated;
  const Instant by = s.off_by + std::chrono::minutes{static_cast<long>(in_minutes(s.shuttle + kGrace))};
  const std::string deadline = told.clock.ten_minutes_after(by);
  const Settings& settings = told.in.settings;
  return fmt::format("If not heard by {}: call {}, then emergency services, and read them this page.", deadline,
                     with_phone(settings.ashore_contact, settings.ashore_phone));
}

void add_spot(Page& page, const Told& told) {
  const PlannedStretch& s = *told.floated;
  page.blocks.push_back(Lines{{call_words(told)}, "CALL"});
  page.blocks.push_back(Lines{persons(told), "WHO"});
  page.blocks.push_back(Lines{{fmt::format("{} ({}), {}: {}", or_blank(s.from_name),
                                           say_place(s.from_place, told.in.river, told.units), word_for(*s.spot),
                                           fished_hours(s, told.clock)),
                               "car and plate ______________________"},
                              "AT"});
  page.blocks.push_back(Lines{water_lines(told), "WATER"});
}

void add_float(Page& page, const Told& told) {
  const PlannedStretch& s = *told.floated;
  page.blocks.push_back(Lines{{call_words(told)}, "CALL"});
  page.blocks.push_back(Lines{{or_blank(told.in.settings.boat) + "; trailer and plate ______________________"}, "BOAT"});
  page.blocks.push_back(Lines{persons(told), "ABOARD"});
  page.blocks.push_back(
      Lines{{place_words(told, s.from, s.from_name) + ", launch " + told.clock.ten_minutes(s.launch)}, "PUT IN"});
  page.blocks.push_back(
      Lines{{place_words(told, s.to, s.to_name) + ", off by " + told.clock.ten_minutes(s.off_by)}, "TAKE OUT"});
  page.blocks.push_back(Lines{water_lines(told), "WATER"});
}

}  // namespace

Page left_ashore(const DayPlan& plan, const DayInputs& in) {
  const Told facts = told(plan, in);
  Page page;
  page.title = typed(in.river.name) + ", left ashore, " + say_day(plan.day);
  page.blocks.push_back(Heading{"LEFT ASHORE: " + typed(in.river.name), head_of_day(plan.day), 1});
  if (facts.floated == nullptr) {
    if (!in.settings.boat_of_several.empty()) page.blocks.push_back(Lines{{say_boat(facts)}, "BOAT"});
    page.blocks.push_back(Lines{{fmt::format("No {} is planned for this day: nobody is expected on the water by this plan.",
                                             at_spot(facts) ? "fishing" : "float")},
                                ""});
  } else if (at_spot(facts)) {
    add_spot(page, facts);
  } else {
    add_float(page, facts);
  }
  if (!in.settings.emergency.empty()) page.blocks.push_back(Lines{{typed(in.settings.emergency)}, "HELP"});
  page.blocks.push_back(Lines{
      {fmt::format("Made {}, {}. Plans change on the water: the times are when to begin to ask, not where they are.",
                   facts.clock.minute(plan.made_at), say_day(facts.clock.day(plan.made_at)))},
      "FROM"});
  return page;
}

}  // namespace floatwright
