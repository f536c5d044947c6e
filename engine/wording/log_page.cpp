#include "engine/wording/log_page.hpp"

#include <fmt/format.h>

#include "engine/river/names.hpp"
#include "engine/wording/say_learned.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

// To the tenth that it was noted in.
std::string say_noted(Length length, UnitSystem units) {
  return units == UnitSystem::Us ? fmt::format("{:.2g} ft", in_feet(length)) : fmt::format("{:.2g} m", in_metres(length));
}

std::string say_float(const LogEntry& entry, const LocalClock& clock) {
  const FloatMet& trip = *entry.trip;
  const std::string stopped = trip.stopped_noted ? "" : " as usual";
  return fmt::format("{} to {}, taken out {}, stopped {:.0f} min{}", typed(trip.from), typed(trip.to),
                     clock.minute(trip.taken_out), in_minutes(trip.stopped), stopped);
}

std::vector<std::string> things_met(const LogEntry& entry, UnitSystem units) {
  std::vector<std::string> things;
  if (entry.depth) things.push_back("depth " + say_noted(*entry.depth, units) + (entry.by_count ? " by count" : ""));
  if (entry.surface_speed) things.push_back("surface speed " + say_speed(Speed::from_si(entry.surface_speed->si()), units));
  if (entry.bottom) things.push_back(*entry.bottom ? "bottom Y" : "bottom N");
  if (entry.fly) things.push_back("fly " + say_noted(entry.fly->depth, units));
  if (entry.count) things.push_back(fmt::format("count {:.0f}", in_seconds(*entry.count)));
  if (!entry.rod.empty()) things.push_back("rod " + typed(entry.rod));
  if (entry.temperature) things.push_back("water " + say_temperature(*entry.temperature, units));
  return things;
}

std::string flow_then(const LogEntry& entry, UnitSystem units) {
  return entry.flow ? "at " + say_flow(entry.flow->best, units) : "flow not known";
}

std::vector<std::string> lines_of(const LogTold& told, const std::vector<LogEntry>& entries) {
  std::vector<std::string> lines;
  for (const LogEntry& entry : entries)
    lines.push_back(typed(entry.id) + "  " + say(entry, told.units, told.clock) + "; " + flow_then(entry, told.units) + ".");
  return lines;
}

void add_learned(Page& page, const LogTold& told) {
  std::vector<std::string> lines;
  for (const LearnedWater& water : told.learned.waters) lines.push_back(say(water, told.river, told.units));
  for (const LearnedPace& pace : told.learned.boats) lines.push_back(say(pace));
  if (lines.empty()) lines.push_back("Nothing yet: no entry teaches anything.");
  lines.push_back("Your own notes in the river file stay as they are; these go on top of them in every plan.");
  page.blocks.push_back(Lines{std::move(lines), "MET"});
}

void add_doubtful(Page& page, const LogTold& told) {
  std::vector<std::string> lines;
  for (const LogDoubt& doubt : told.learned.idle)
    lines.push_back(fmt::format("{} teaches nothing: {}.", typed(told.entries[doubt.entry].id), typed(doubt.why)));
  for (const Contradiction& contradiction : told.learned.contradictions) lines.push_back(say(contradiction, told.entries));
  if (!lines.empty()) page.blocks.push_back(Lines{std::move(lines), "BUT"});
}

}  // namespace

std::string say(const LogEntry& entry, UnitSystem units, const LocalClock& clock) {
  const std::string when = short_day(clock.day(entry.at)) + " " + clock.minute(entry.at) + " ";
  if (entry.trip) return when + say_float(entry, clock);
  const std::string kind = entry.water ? " " + std::string(word_for(*entry.water)) : "";
  const std::string name = typed(entry.where);
  return fmt::format("{}{}{}: {}", when, name, name.ends_with(kind) ? "" : kind, fmt::join(things_met(entry, units), ", "));
}

std::string say(const Contradiction& contradiction, const std::vector<LogEntry>& entries) {
  return fmt::format("{} and {} speak against each other: both are kept and count.", typed(entries[contradiction.entry].id),
                     typed(entries[contradiction.other].id));
}

Page log_page(const LogTold& told) {
  Page page;
  page.title = typed(told.river.name) + ", what was met on the water";
  page.blocks.push_back(Heading{typed(told.river.name) + "  what was met on the water", "", 1});
  add_learned(page, told);
  add_doubtful(page, told);
  if (!told.entries.empty()) page.blocks.push_back(Lines{lines_of(told, told.entries), "LOG"});
  if (!told.retracted.empty()) page.blocks.push_back(Lines{lines_of(told, told.retracted), "BACK"});
  return page;
}

}  // namespace floatwright
