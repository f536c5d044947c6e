#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_reading.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string gauge_name(const Told& told, const std::string& id) {
  const auto& gauges = told.in.river.gauges;
  const auto found = std::find_if(gauges.begin(), gauges.end(), [&](const GaugeSite& g) { return g.id == id; });
  if (found == gauges.end() || found->name.empty()) return typed(id);
  return typed(found->name) + " (" + typed(id) + ")";
}

// "flow 1,850 cfs, water 47 F, read 19:45 ...": values read together are told together.
std::string readings_of(const Told& told, const std::string& gauge) {
  const DayPlan& plan = told.plan;
  std::string words, when;
  for (std::size_t i = 0; i < plan.readings.size() && i < plan.reading_gauges.size(); ++i) {
    if (plan.reading_gauges[i] != gauge) continue;
    const NewestReading& reading = plan.readings[i];
    const std::string this_when = say_when(reading, plan.made_at, plan.day, told.clock);
    if (!when.empty() && this_when != when) words += ", " + when + ";";
    words += (words.empty()         ? ""
              : words.back() == ';' ? " "
                                    : ", ") +
             say(reading.variable) + " " + say_value(reading, told.units);
    when = this_when;
  }
  return words + ", " + when;
}

std::vector<std::string> reading_lines(const Told& told) {
  std::vector<std::string> gauges, lines;
  for (const std::string& gauge : told.plan.reading_gauges)
    if (std::find(gauges.begin(), gauges.end(), gauge) == gauges.end()) gauges.push_back(gauge);
  for (const std::string& gauge : gauges)
    lines.push_back(gauge_name(told, gauge) + ": " + readings_of(told, gauge) + ".");
  for (const std::string& gauge : told.plan.missing_gauges) lines.push_back(gauge_name(told, gauge) + ": NO READING.");
  return lines;
}

bool reaches_into(RiverPlace upper, RiverPlace lower, const PlannedStretch& stretch) {
  return upper > stretch.to_place && lower < stretch.from_place;
}

void add_dates(std::set<std::chrono::sys_days>& dates, const std::vector<Water>& waters) {
  for (const Water& water : waters)
    for (const WaterNote& note : water.notes)
      if (note.seen_on && note.seen_on->ok()) dates.insert(std::chrono::sys_days{*note.seen_on});
}

std::set<std::chrono::sys_days> dates_of_notes(const Told& told) {
  std::set<std::chrono::sys_days> dates;
  for (const NamedReach& reach : told.in.river.reaches)
    if (reaches_into(reach.from, reach.to, *told.floated)) add_dates(dates, reach.waters);
  for (const StretchNote& note : told.in.river.notes)
    if (reaches_into(note.from, note.to, *told.floated)) add_dates(dates, note.waters);
  return dates;
}

std::string flows_of_notes(const Told& told) {
  std::optional<Discharge> low, high;
  for (const PlannedReach& reach : told.floated->reaches) {
    for (const PlannedWater& water : reach.waters) {
      if (!water.noted_at || water.source == DepthSource::Guessed) continue;
      if (!low || *water.noted_at < *low) low = *water.noted_at;
      if (!high || *water.noted_at > *high) high = *water.noted_at;
    }
  }
  if (!low || !high) return "";
  const std::string from = flow_figure(*low, told.units), to = say_flow(*high, told.units);
  return flow_figure(*high, told.units) == from ? " at " + to : " at " + from + " to " + to;
}

std::string note_words(const Told& told) {
  const auto dates = dates_of_notes(told);
  std::string when = " without a date";
  if (!dates.empty()) when = " of " + short_day(*dates.begin());
  if (dates.size() > 1) when += " to " + short_day(*dates.rbegin());
  return "Depths and speeds from notes" + when + flows_of_notes(told) + ", carried to the flow of the hour.";
}

const PlannedWater* first_under_water(const Told& told) {
  for (const PlannedReach& reach : told.floated->reaches)
    for (const PlannedWater& water : reach.waters)
      if (water.choice.best && water.depth && water.choice.best->technique.method != Method::Dry) return &water;
  return nullptr;
}

std::string band_words(const Told& told) {
  std::string words = "Low and high (in brackets): one day in ten is lower, one in ten higher.";
  if (const PlannedWater* water = first_under_water(told)) {
    const Band<Length>& fly = water->choice.best->fly_depth;
    words +=
        fmt::format(" A fly told at {} may be at {} {}, a depth told at {} may be {} {}.",
                    say_length(fly.best, told.units), length_range_figure(fly.low, fly.high, told.units),
                    length_unit(told.units), say_length(water->depth->best, told.units),
                    length_range_figure(water->depth->low, water->depth->high, told.units), length_unit(told.units));
  }
  return words + " Nothing here was compared with a fly line in a real river.";
}

void add_source(std::vector<std::string>& sources, const std::string& source) {
  const std::string words = without_stop(typed(source));
  if (!words.empty() && std::find(sources.begin(), sources.end(), words) == sources.end()) sources.push_back(words);
}

// Down the float: all of a few, the first and the last of many.
std::string down_the_float(const std::vector<std::string>& sources) {
  if (sources.size() > 3) return sources.front() + "; and so on to " + sources.back();
  std::string words;
  for (const std::string& source : sources) words += (words.empty() ? "" : "; ") + source;
  return words;
}

std::vector<std::string> method_lines(const Told& told) {
  std::vector<std::string> flow, temperature, lines;
  for (const PlannedReach& reach : told.floated->reaches) {
    add_source(flow, reach.flow_source);
    add_source(temperature, reach.temperature_source);
  }
  if (!flow.empty()) lines.push_back("Flow: " + down_the_float(flow) + ".");
  if (!temperature.empty()) lines.push_back("Water temperature: " + down_the_float(temperature) + ".");
  lines.push_back(note_words(told));
  lines.push_back(band_words(told));
  return lines;
}

}  // namespace

void add_sources(Page& page, const Told& told) {
  std::vector<std::string> lines = reading_lines(told);
  if (lines.empty()) lines.push_back("No gauge was read.");
  if (told.floated != nullptr)
    for (std::string& line : method_lines(told)) lines.push_back(std::move(line));
  for (const std::string& note : told.plan.notes) lines.push_back(capitalised(typed(note)));
  lines.push_back(
      fmt::format("Made {}, {}.", told.clock.minute(told.plan.made_at), say_day(told.clock.day(told.plan.made_at))));
  page.blocks.push_back(Lines{lines, "FROM"});
}

void add_foot(Page& page, const Told& told) {
  page.blocks.push_back(Lines{{kFoot}, ""});
  if (!told.in.settings.emergency.empty()) page.blocks.push_back(Lines{{typed(told.in.settings.emergency)}, "HELP"});
  if (told.floated != nullptr)
    page.blocks.push_back(PencilBoxes{
        {"where", "hour", "depth", "surface speed", "bottom Y/N", "rod", "water " + temperature_unit(told.units)}});
}

}  // namespace floatwright
