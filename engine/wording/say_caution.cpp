#include "engine/wording/say_caution.hpp"

#include <fmt/format.h>

#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr Length kLeastRiseTold = feet(0.25);  // rounds to half a foot

std::string or_else(const std::string& about, const char* word) { return about.empty() ? word : typed(about); }

// "12:40 (12:00-13:30)", as much of it as is known: a caution begins early and ends late.
std::string hours_of(const Caution& c, const CautionWords& words) {
  const LocalClock& clock = words.clock;
  std::string span;
  if (c.from && c.to) span = clock.ten_minutes_before(*c.from) + "-" + clock.ten_minutes_after(*c.to);
  if (c.from && !c.to) span = "from " + clock.ten_minutes_before(*c.from);
  if (!c.from && c.to) span = "until " + clock.ten_minutes_after(*c.to);
  if (!c.at || c.at == c.from || (words.brief && !span.empty())) return span;
  const std::string expected = clock.ten_minutes(*c.at);
  return span.empty() ? expected : fmt::format("{} ({})", expected, span);
}

std::string at_flow(const Caution& c, UnitSystem units) {
  return c.flow ? say_flow(*c.flow, units) : "the flow of the day";
}

std::string from_to(const Caution& c, UnitSystem units) {
  if (!c.flow || !c.flow_after) return "";
  return fmt::format(" from {} to {}", flow_figure(*c.flow, units), say_flow(*c.flow_after, units));
}

std::string limit_of(const std::optional<Temperature>& limit, UnitSystem units) {
  return limit ? fmt::format(" (limit {})", say_temperature(*limit, units)) : "";
}

std::string met(const Caution& c, UnitSystem units) {
  return c.temperature ? "Water up to " + say_temperature(*c.temperature, units) : "Water too warm";
}

std::string say_heat_caution(const Caution& c, UnitSystem units) {
  return met(c, units) + limit_of(c.temperature_limit, units) +
         ": land fish quickly and keep them in the water; measure, and stop early if it is warmer.";
}

std::string say_heat_stop(const Caution& c, const CautionWords& words) {
  const std::string at = c.at ? " at " + words.clock.ten_minutes(*c.at) : "";
  return fmt::format("TOO WARM TO FISH FOR TROUT: {}, no fishing again that evening. {}{}{}; {}", say_stop_by(c, words.clock),
                     met(c, words.units), at, limit_of(c.temperature_limit, words.units),
                     c.on_foot ? "come earlier." : "float less or launch earlier.");
}

std::string say_heat_unknown(const Caution& c, UnitSystem units) {
  const std::string leave =
      c.temperature_limit ? " Leave trout alone from " + say_temperature(*c.temperature_limit, units) + "." : "";
  return std::string("Water temperature is not known: measure ") + (c.on_foot ? "when you come" : "at the put-in") +
         " and at noon." + leave + " Cold water kills: life jackets ON until you have measured.";
}

std::string say_cold(const Caution& c, UnitSystem units) {
  const std::string water = c.temperature ? "Water down to " + say_temperature(*c.temperature, units) : "Cold water";
  return water + ": life jackets ON, everyone, all day." +
         (c.emergency ? std::string(" A swim is an emergency: dry clothes ") + (c.on_foot ? "at hand." : "aboard.") : "");
}

// "2 1/2 ft at 2 ft/s"
std::string waded_words(const Caution& c, UnitSystem units) {
  return (c.depth ? say_length(*c.depth, units) : "") + (c.speed ? " at " + say_speed(*c.speed, units) : "");
}

// From a boat the waters that are too much are many.
bool numbers_with_place(const Caution& c, const CautionWords& words) {
  return words.together && c.kind == CautionKind::Wading && !c.on_foot && beyond_wading(c);
}

std::string say_wading(const Caution& c, const CautionWords& words) {
  const bool apart = numbers_with_place(c, words);
  const std::string lane = waded_words(c, words.units);
  std::string numbers = apart || lane.empty() ? "" : ", " + lane;
  const std::string product = c.product && !apart ? say_depth_times_speed(*c.product, words.units) + ", " : "";
  if (c.product_limit)
    numbers += fmt::format(" ({}limit {})", product, say_depth_times_speed(*c.product_limit, words.units));
  if (!beyond_wading(c))
    return "Wading" + numbers + " at the most: less may be too much for you. Test each step, and turn back when in doubt.";
  return "Too deep or too fast to wade" + numbers + (c.on_foot ? ": stay out of it" : ": stay in the boat") +
         ". Less may be too much for you.";
}

std::string say_dam_rise(const Caution& c, const CautionWords& words) {
  const std::string dam = or_else(c.about, "The dam"), change = from_to(c, words.units);
  const std::string not_to_do = fmt::format("no wading {}in those hours{}.", c.on_foot ? "" : "or anchoring ",
                                            c.on_foot ? ", be on the bank before they begin" : "");
  if (words.brief) return dam + " up" + change + ": " + not_to_do;
  return fmt::format("{} releases more water, up{}: {} The schedule may change.", dam, change, not_to_do);
}

std::string say_dam_drop(const Caution& c, UnitSystem units) {
  return fmt::format("{} holds water back, down{}: bars and shelves come up, {}.", or_else(c.about, "The dam"),
                     from_to(c, units),
                     c.on_foot ? "do not follow the edge out: it comes back" : "do not leave the boat aground");
}

// "+27 % in 3 h"
std::string share_risen(const Caution& c) {
  if (!c.flow || !c.flow_after || !(*c.flow > Discharge{})) return "";
  const std::string within = c.from && c.to ? " in " + say_duration(duration(*c.to - *c.from)) : "";
  return fmt::format(" (+{:.0f} %{})", 100.0 * (*c.flow_after / *c.flow - 1.0), within);
}

// Of a gauge: what it has shown, before the trip.
bool is_rising_now(const Caution& c) { return c.kind == CautionKind::FastRise && !c.about.empty(); }

std::string risen_words(const Caution& c, const CautionWords& words) {
  return typed(c.about) + (words.brief ? "" : from_to(c, words.units)) + share_risen(c);
}

std::string say_rising_now(const Caution& c, const CautionWords& words) {
  return fmt::format("{} fast, and how far is not known. If it still rises when you get there: leave the bars, {}, and look out for "
                     "wood coming down.",
                     words.together ? "Rising" : risen_words(c, words) + ": rising",
                     c.on_foot ? "stay out of the water" : "do not anchor");
}

std::string say_fast_rise(const Caution& c, const CautionWords& words) {
  const UnitSystem units = words.units;
  if (is_rising_now(c)) return say_rising_now(c, words);
  const bool tells = c.rise && *c.rise >= kLeastRiseTold;
  const std::string rise = tells ? ", " + say_length(*c.rise, units) + " in an hour" : "";
  return fmt::format("River rising fast{}: leave the bars, {}.",
                     words.brief ? "" : from_to(c, units) + share_risen(c) + rise,
                     c.on_foot ? "get out of the water" : "do not anchor");
}

std::string say_boat_limit(const Caution& c, UnitSystem units) {
  if (!c.flow_limit) return at_flow(c, units) + " may be outside your boat's limits.";
  const bool over = c.flow && *c.flow > *c.flow_limit;
  const std::string limit = say_flow(*c.flow_limit, units);
  return fmt::format("{} is {} {}.", at_flow(c, units), over ? "over" : "under",
                     c.about.empty() ? "your boat's limit of " + limit : "the limit of " + limit + " typed for it");
}

std::string say_hazard(const Caution& c, UnitSystem units) {
  const std::string limit =
      c.flow_limit ? " at " + at_flow(c, units) + ", typed limit " + say_flow(*c.flow_limit, units) : "";
  return or_else(c.about, "Hazard") + limit + ": stop above and look before running it.";
}

std::string say_portage(const Caution& c, UnitSystem) {
  const std::string time = c.time ? ", " + say_duration(*c.time) : "";
  return or_else(c.about, "Hazard") + ": STOP ABOVE and carry round" + time + ".";
}

std::string say_old_reading(const Caution& c, const LocalClock& clock) {
  const std::string when = c.at ? " (last " + clock.minute(*c.at) + ", " + short_day(clock.day(*c.at)) + ")" : "";
  const std::string age = c.age ? "is " + say_age(*c.age) + " old" : "is old";
  return fmt::format("Newest reading of {} {}{}: look at the gauge before you {}.", or_else(c.about, "the gauge"), age,
                     when, c.on_foot ? "go in" : "launch");
}

std::string say_wind(const Caution& c, const CautionWords& words) {
  const std::string speed = c.speed ? say_wind_speed(*c.speed, words.units) : "strong";
  const bool boat = c.emergency && !c.on_foot;
  return "Wind up to " + speed + (boat ? ": the boat will not drift your line, and casts are short." : ": casts are short.");
}

std::string say_rain(const Caution& c, UnitSystem units) {
  const std::string depth = c.rise ? say_rain_depth(*c.rise, units) : "Rain";
  return depth + " of rain forecast within a day: the river may rise more than told.";
}

std::string say_rules(const Caution& c) {
  const std::string last = c.date ? "Rules last looked up " + short_day(*c.date) : "Rules never looked up";
  return last + ": CHECK AGAIN TODAY.";
}

std::string say_closure_likely(const Caution& c, UnitSystem units) {
  const std::string water = c.temperature ? " (water to " + say_temperature(*c.temperature, units) + ")" : "";
  return "A heat closure is likely" + water + ": look it up before you " + (c.on_foot ? "fish." : "launch.");
}

std::string say_doubt(const Caution& c, UnitSystem units) {
  const std::string span = c.flow && c.flow_after
                               ? fmt::format(", {} to {}", flow_figure(*c.flow, units), say_flow(*c.flow_after, units))
                               : "";
  return "The day's flow is doubtful" + span + ": look at the gauge in the morning.";
}

std::string say_guessed(const Caution& c, UnitSystem units) {
  if (!c.flow || !c.flow_after) return "Depth is a guess: sound it before you trust the line.";
  return fmt::format("This flow is beyond what was measured, {} to {}: depth and speed are less certain.",
                     flow_figure(*c.flow, units), say_flow(*c.flow_after, units));
}

// What a person typed of a hazard need not name it.
std::string about_before(const Caution& c) {
  const bool hazard = c.kind == CautionKind::Hazard || c.kind == CautionKind::Portage;
  const bool named = c.about.empty() || c.text.find(c.about) != std::string::npos;
  return hazard && !named ? typed(c.about) + ": " : "";
}

// "Off the water by 17:20, sunset 17:17: launch earlier or float less."
std::string say_dark(const Caution& c, const CautionWords& words) {
  const std::string by = c.to ? "by " + words.clock.ten_minutes_after(*c.to) : "near dark";
  const std::string sunset = c.from ? ", sunset " + words.clock.minute(*c.from) : "";
  return "Off the water " + by + sunset + (c.on_foot ? ": come earlier." : ": launch earlier or float less.");
}

// Sentences without a number that their kind could lack.
std::string say_plain(const Caution& c) {
  switch (c.kind) {
    case CautionKind::MissingGauge:
      return "No reading of " + or_else(c.about, "a gauge") + ": what hangs on it is less sure.";
    case CautionKind::UnknownFlow:
      return std::string("Flow is not known: no line is named") + (c.on_foot ? ", nor whether you can wade there." : ".");
    case CautionKind::Ice:
      return std::string("Ice at the gauge, flow not known: look at the river before you ") + (c.on_foot ? "go in" : "launch") +
             ". Banks and ramps ice over, and ice that comes down can close the river.";
    case CautionKind::Closure:
      return "Closed as typed: do not fish. Look at the posted sign.";
    case CautionKind::WoodAfterHighWater:
      return "High water: wood may have moved, look ahead.";
    default:
      return "Take care.";
  }
}

}  // namespace

bool beyond_wading(const Caution& c) {
  return (c.product && c.product_limit && *c.product > *c.product_limit) || (c.depth && c.depth_limit && *c.depth > *c.depth_limit);
}

std::string say_what(const Caution& c, const CautionWords& words) {
  if (!c.text.empty() && c.kind == CautionKind::Closure) return "Closed to fishing (" + without_stop(typed(c.text)) + ").";
  if (!c.text.empty()) return capitalised(about_before(c) + typed(c.text));
  switch (c.kind) {
    case CautionKind::OldReading:
      return say_old_reading(c, words.clock);
    case CautionKind::HeatCaution:
      return say_heat_caution(c, words.units);
    case CautionKind::HeatStop:
      return say_heat_stop(c, words);
    case CautionKind::HeatUnknown:
      return say_heat_unknown(c, words.units);
    case CautionKind::ColdWater:
      return say_cold(c, words.units);
    case CautionKind::Wading:
      return say_wading(c, words);
    case CautionKind::DamRise:
      return say_dam_rise(c, words);
    case CautionKind::DamDrop:
      return say_dam_drop(c, words.units);
    case CautionKind::FastRise:
      return say_fast_rise(c, words);
    case CautionKind::BoatLimit:
      return say_boat_limit(c, words.units);
    case CautionKind::Hazard:
      return say_hazard(c, words.units);
    case CautionKind::Portage:
      return say_portage(c, words.units);
    case CautionKind::RulesOld:
      return say_rules(c);
    case CautionKind::ClosureLikely:
      return say_closure_likely(c, words.units);
    case CautionKind::ForecastDoubt:
      return say_doubt(c, words.units);
    case CautionKind::GuessedDepth:
      return say_guessed(c, words.units);
    case CautionKind::Wind:
      return say_wind(c, words);
    case CautionKind::Rain:
      return say_rain(c, words.units);
    case CautionKind::Dark:
      return say_dark(c, words);
    default:
      return say_plain(c);
  }
}

std::string say_stop_by(const Caution& c, const LocalClock& clock) {
  return c.from ? "stop by " + clock.ten_minutes_before(*c.from) : "stop before";
}

std::string say_where_and_when(const Caution& c, const CautionWords& words) {
  if (c.kind == CautionKind::Ice) return or_else(c.about, "the gauge");
  if (c.kind == CautionKind::WoodAfterHighWater)
    return or_else(c.about, "the gauge") + (c.at ? " on " + day_of_week(words.clock.day(*c.at)) : "");
  if (numbers_with_place(c, words)) return typed(c.where) + (words.brief ? "" : ", " + waded_words(c, words.units));
  if (is_rising_now(c)) return words.together ? risen_words(c, words) : typed(c.where);
  const bool hours_are_in_the_sentence = c.kind == CautionKind::OldReading || c.kind == CautionKind::ColdWater ||
                                         c.kind == CautionKind::HeatStop || c.kind == CautionKind::Dark;
  const std::string hours = hours_are_in_the_sentence ? "" : hours_of(c, words);
  const std::string where = typed(c.where);
  return where.empty() || hours.empty() ? where + hours : where + (words.brief ? " " : ", ") + hours;
}

std::string say(const Caution& c, const CautionWords& words) {
  const std::string before = say_where_and_when(c, words);
  return before.empty() ? say_what(c, words) : capitalised(before) + ": " + say_what(c, words);
}

}  // namespace floatwright
