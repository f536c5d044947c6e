#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_learned.hpp"
#include "engine/wording/say_reading.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_source.hpp"
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
  std::vector<std::string> whens, values;
  for (std::size_t i = 0; i < plan.readings.size() && i < plan.reading_gauges.size(); ++i) {
    if (plan.reading_gauges[i] != gauge) continue;
    const NewestReading& reading = plan.readings[i];
    const std::string when = say_when(reading, plan.made_at, plan.day, told.clock);
    const std::string value = say(reading.variable) + " " + say_value(reading, told.units);
    const auto at = static_cast<std::size_t>(std::find(whens.begin(), whens.end(), when) - whens.begin());
    if (at == whens.size()) {
      whens.push_back(when);
      values.push_back(value);
    } else {
      values[at] += ", " + value;
    }
  }
  std::string words;
  for (std::size_t i = 0; i < whens.size(); ++i) words += (i == 0 ? "" : "; ") + values[i] + ", " + whens[i];
  return words;
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
  if (at_spot(told)) {
    for (const Spot& spot : told.in.river.spots)
      if (spot.id == told.floated->from) add_dates(dates, spot.waters);
    return dates;
  }
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

// Where water is told that nobody described, and what to type to have it told better; empty: nowhere.
std::string likely_words(const Told& told) {
  std::vector<std::string> places;
  for (const PlannedReach& reach : told.floated->reaches) {
    const bool likely = !reach.described && !reach.waters.empty() && is_fished(reach);
    if (likely && std::find(places.begin(), places.end(), at_reach(reach)) == places.end()) places.push_back(at_reach(reach));
  }
  if (places.empty()) return "";
  return fmt::format("Nobody described the water {}: its kind, depth and speed are guessed from the channel, a depth by a third "
                     "under to half over. Type \"waters\" with depth, surface speed and flow {} in river.json.",
                     joined(places), at_spot(told) ? "for the spot" : "into \"notes\" or \"reaches\"");
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

// "Gauge ferry ahead: the releases typed for Heron Dam, routed down."
std::vector<std::string> followed_lines(const Told& told) {
  std::vector<std::string> dams, lines;
  std::vector<std::vector<std::string>> gauges;
  for (const GaugeOutlook& outlook : told.plan.outlooks) {
    const std::string dam = followed_dam(told.plan, told.in.river, outlook.gauge);
    if (dam.empty()) continue;
    const auto at = static_cast<std::size_t>(std::find(dams.begin(), dams.end(), dam) - dams.begin());
    if (at == dams.size()) {
      dams.push_back(dam);
      gauges.emplace_back();
    }
    gauges[at].push_back(typed(outlook.gauge));
  }
  for (std::size_t i = 0; i < dams.size(); ++i)
    lines.push_back(fmt::format("From the newest reading on, gauge{} {} by the releases typed for {}, routed down.",
                                gauges[i].size() > 1 ? "s" : "", joined(gauges[i]), dams[i]));
  return lines;
}

constexpr std::size_t kMostMet = 4;  // on a page; all of them with log --show

std::vector<std::string> met_lines(const Told& told) {
  std::vector<std::string> lines = say_what_was_met(told.floated->reaches, told.units);
  if (lines.size() > kMostMet) {
    const std::size_t more = lines.size() - kMostMet;
    lines.resize(kMostMet);
    lines.push_back(fmt::format("Of {} more waters what was logged is in it too.", more));
  }
  if (const Correction pace = pace_of(told.in.learned, told.in.settings.boat); pace.entries > 0)
    lines.push_back(say(LearnedPace{told.in.settings.boat, pace}));
  return lines;
}

std::vector<std::string> method_lines(const Told& told) {
  std::vector<std::string> lines = followed_lines(told);
  const auto& reaches = told.floated->reaches;
  const std::string flow = say_flow_sources(reaches, told.in.river, told.units);
  const std::string temperature = say_temperature_sources(reaches, told.in.river, told.units);
  if (!flow.empty()) lines.insert(lines.begin(), "Flow: " + flow + ".");
  if (!temperature.empty()) lines.push_back("Water temperature: " + temperature + ".");
  if (std::any_of(reaches.begin(), reaches.end(), [](const PlannedReach& r) { return r.described; }))
    lines.push_back(note_words(told));
  if (std::string likely = likely_words(told); !likely.empty()) lines.push_back(std::move(likely));
  for (std::string& line : met_lines(told)) lines.push_back(std::move(line));
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
}

void add_log_boxes(Page& page, const Told& told) {
  page.blocks.push_back(PencilBoxes{
      {"where", "hour", "depth", "surface speed", "bottom Y/N", "rod", "water " + temperature_unit(told.units)}});
}

}  // namespace floatwright
