#include <fmt/format.h>

#include <algorithm>

#include "engine/river/names.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/water/bed_profile.hpp"
#include "engine/wording/river_page.hpp"
#include "engine/wording/say_learned.hpp"
#include "engine/wording/say_slowing.hpp"
#include "engine/wording/say_source.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr int kFirstHour = 6, kLastHour = 21, kEvery = 3;  // of the rows: the hours in which people are about

bool is_told(const ReachHour& hour, const std::string& zone) {
  const double since_midnight = in_hours(time_of_day(hour.at, zone));
  const int whole = static_cast<int>(since_midnight);
  return whole >= kFirstHour && whole <= kLastHour && whole % kEvery == 0;
}

template <class T, class Figure>
std::string band_cell(const Measured<Band<T>>& band, const Figure& figure) {
  if (!band) return "?";
  const std::string low = figure(band->low), best = figure(band->best), high = figure(band->high);
  return low == high ? best : fmt::format("{} ({}-{})", best, low, high);
}

std::string water_cell(const WaterHour& water, UnitSystem units) {
  if (!water.depth || !water.surface_speed) return "?";
  return length_figure(water.depth->best, units) + ", " + speed_figure(Speed::from_si(water.surface_speed->best.si()), units);
}

std::string upper(std::string_view word) {
  std::string text{word};
  for (char& c : text)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return text;
}

PageTable hours_table(const Told& told, const BelievedReach& reach) {
  PageTable table{{"HOUR", "FLOW", "WATER"}, {"", flow_unit(told.units), temperature_unit(told.units)}, {}};
  for (const BelievedWater& water : reach.waters) {
    table.head.push_back(upper(word_for(water.type)));
    table.units.push_back(length_unit(told.units) + ", " + speed_unit(told.units));
  }
  for (const ReachHour& hour : reach.hours) {
    if (!is_told(hour, told.plan.time_zone)) continue;
    std::vector<std::string> row{told.clock.minute(hour.at),
                                 band_cell(hour.flow, [&](Discharge q) { return flow_figure(q, told.units); }),
                                 band_cell(hour.temperature, [&](Temperature t) { return temperature_figure(t, told.units); })};
    for (const WaterHour& water : hour.waters) row.push_back(water_cell(water, told.units));
    table.rows.push_back(std::move(row));
  }
  return table;
}

const ReachHour& noon_of(const BelievedReach& reach) { return reach.hours[reach.hours.size() / 2]; }

std::string source_words(const BelievedWater& water, UnitSystem units) {
  if (water.source == DepthSource::Guessed && !water.noted_at) return "a guess from the channel";
  return fmt::format("{}{}{}", word_for(water.source), water.noted_at ? " at " + say_flow(*water.noted_at, units) : "",
                     water.far_from_note ? ", far from the flow of the day" : "");
}

// "; 0.4 ft deeper than noted (3 entries)"
std::string met_words(const BelievedWater& water, const WaterHour& noon, UnitSystem units) {
  std::string words;
  for (const std::string& part :
       {say_deeper(water.depth_met, noon.depth->best, units), say_faster(water.speed_met, noon.surface_speed->best, units)})
    if (!part.empty()) words += "; " + part;
  return words;
}

// "Run, noted at 1,800 cfs: at noon 4-5 ft deep, 2.8-3.9 ft/s on the surface."
std::string water_line(const BelievedWater& water, const WaterHour& noon, UnitSystem units) {
  const std::string kind = capitalised(std::string(word_for(water.type)));
  if (!noon.depth) return kind + " not known: " + without_stop(typed(noon.depth.why_absent())) + ".";
  if (!noon.surface_speed) return kind + ": no speed: " + without_stop(typed(noon.surface_speed.why_absent())) + ".";
  const auto speed = [](SurfaceSpeed u) { return Speed::from_si(u.si()); };
  return fmt::format("{}, {}: at noon {} {} deep, {} {} on the surface{}.", kind, source_words(water, units),
                     length_range_figure(noon.depth->low, noon.depth->high, units), length_unit(units),
                     speed_range_figure(speed(noon.surface_speed->low), speed(noon.surface_speed->high), units),
                     speed_unit(units), met_words(water, noon, units));
}

std::string slowing_line(const BelievedReach& reach) {
  std::vector<double> means;  // over the surface speed
  for (const WaterHour& water : noon_of(reach).waters)
    if (water.depth) means.push_back(mean_over_surface(bed_profile(reach.bed, water.depth->best), water.depth->best));
  if (means.empty()) return "";
  const auto [least, most] = std::ranges::minmax(means);
  return say_slowing(reach.bed, least, most);
}

std::string channel_line(const BelievedReach& reach, UnitSystem units) {
  const ReachHour& noon = noon_of(reach);
  if (!noon.mean_depth || !noon.mean_speed) return "";
  return fmt::format("Channel{}: at noon {} deep in the mean, {} in the mean.",
                     reach.channel_guessed ? ", guessed from the size of the river" : "",
                     say_length(noon.mean_depth->best, units), say_speed(Speed::from_si(noon.mean_speed->best.si()), units));
}

std::vector<std::string> source_lines(const Told& told, const BelievedReach& reach) {
  std::vector<std::string> lines{
      fmt::format("Flow: {}. Water temperature: {}.", say(reach.flow_source, told.in.river, told.units),
                  say(reach.temperature_source, told.in.river, told.units))};
  for (std::size_t w = 0; w < reach.waters.size(); ++w)
    lines.push_back(water_line(reach.waters[w], noon_of(reach).waters[w], told.units));
  for (const std::string& words : {slowing_line(reach), channel_line(reach, told.units)})
    if (!words.empty()) lines.push_back(words);
  return lines;
}

// "Tailrace  mile 45.6-44.1, 1.5 mi, cobble"; of water without a name or a landmark the miles alone.
std::string heading_words(const Told& told, const BelievedReach& reach) {
  const River& river = told.in.river;
  const std::string name = reach.name == reach.id ? "" : name_of(reach) + "  ";
  const std::string bed = reach.bed == Bed::Unknown ? "" : ", " + std::string(word_for(reach.bed));
  const std::string words = fmt::format("{}{}-{}, {}{}", name, say_place(reach.from, river, told.units),
                                        place_figure(reach.to, river, told.units),
                                        say_distance(reach.from - reach.to, river, told.units), bed);
  return capitalised(words);
}

}  // namespace

std::string name_of(const BelievedReach& reach) {
  const std::string name = capitalised(typed(reach.name));
  return reach.side_channel.empty() ? name : name + " (side channel)";
}

std::string flow_at_noon(const BelievedReach& reach, UnitSystem units) {
  const auto& flow = noon_of(reach).flow;
  return flow ? say_flow(*flow, units) : "";
}

void add_believed_reach(Page& page, const Told& told, const BelievedReach& reach) {
  page.blocks.push_back(Heading{heading_words(told, reach), "", 2});
  page.blocks.push_back(hours_table(told, reach));
  page.blocks.push_back(Lines{source_lines(told, reach), ""});
}

}  // namespace floatwright
