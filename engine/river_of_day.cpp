#include "engine/river_of_day.hpp"

#include "engine/trip/bands.hpp"
#include "engine/trip/day_facts.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/met_water.hpp"
#include "engine/trip/passages.hpp"
#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

constexpr Period kHour = std::chrono::hours{1};
constexpr double kNoScatter = 0.0;
constexpr double kGuessedScatter = 0.30;  // of the logarithm, as a guessed depth or speed has it

std::vector<Instant> hours_of(const RiverDay& day) {
  const LocalDay local = local_day(day.day, day.river.time_zone);
  std::vector<Instant> hours;
  for (Instant t = local.start; t < local.end; t += kHour) hours.push_back(t);
  return hours;
}

// Each side channel's branch, cut where its named reaches and the graph cut it.
std::vector<Passage> branches(const RiverDay& day) {
  std::vector<Passage> found;
  for (std::size_t r = 0; r < day.graph.reaches.size(); ++r) {
    const Reach& reach = day.graph.reaches[r];
    if (reach.main_thread) continue;
    found.push_back({.from = reach.from, .to = reach.to, .id = reach.id, .name = reach.name, .reach = r,
                     .named_reach = reach.named_reach, .note = reach.note});
  }
  return found;
}

std::vector<Passage> all_passages(const RiverDay& day) {
  if (day.graph.stations.empty()) return {};
  std::vector<Passage> all = passages(day, day.graph.stations.front().place, day.graph.stations.back().place);
  for (Passage& branch : branches(day)) all.push_back(std::move(branch));
  return all;
}

template <class T>
Measured<Band<T>> banded(const Measured<PerCase<T>>& cases) {
  return cases.has_value() ? Measured<Band<T>>{band_of(*cases)} : Absent{cases.why_absent()};
}

void add_channel(ReachHour& hour, const Passage& passage, const Channel& channel, const Measured<PerCase<Discharge>>& flow) {
  if (passage.lake || !flow.has_value()) {
    const std::string why = passage.lake ? "a lake" : flow.why_absent();
    hour.mean_depth = Absent{why};
    hour.mean_speed = Absent{why};
    return;
  }
  const double sd = channel.guessed ? kGuessedScatter : kNoScatter;
  hour.mean_depth = band_with_scatter(each_case(*flow, [&](Discharge q) { return mean_depth(channel, q); }), sd);
  hour.mean_speed = band_with_scatter(each_case(*flow, [&](Discharge q) { return mean_speed(channel, q); }), sd);
}

ReachHour reach_hour(const RiverDay& day, const Passage& passage, const std::vector<Water>& waters, Instant t) {
  ReachHour hour{.at = t};
  const auto flow = known_flow(day, passage.reach, t);
  hour.flow = banded(flow);
  hour.temperature = banded(known_temperature(day, passage.reach, t));
  const Reach& reach = day.graph.reaches[passage.reach];
  add_channel(hour, passage, channel_of(day.river, reach, flow.has_value() ? flow->middle : Discharge{}), flow);
  for (const Water& water : waters) {
    const PlannedWater met = met_water(day, passage, water, t).printed;
    hour.waters.push_back({met.depth, met.surface_speed});
  }
  return hour;
}

void add_waters(const RiverDay& day, const Passage& passage, const std::vector<Water>& waters, BelievedReach& reach) {
  for (std::size_t w = 0; w < waters.size(); ++w) {
    const PlannedWater noon = met_water(day, passage, waters[w], reach.hours[reach.hours.size() / 2].at).printed;
    BelievedWater told{.type = noon.type,
                       .source = noon.source,
                       .noted_at = noon.noted_at,
                       .depth_met = noon.depth_met,
                       .speed_met = noon.speed_met};
    for (const ReachHour& hour : reach.hours) told.far_from_note |= met_water(day, passage, waters[w], hour.at).printed.far_from_note;
    reach.waters.push_back(told);
  }
}

BelievedReach believed(const RiverDay& day, const Passage& passage, const std::vector<Instant>& hours) {
  const Reach& graph_reach = day.graph.reaches[passage.reach];
  BelievedReach reach{.id = passage.id,
                      .name = passage.name,
                      .named = passage.named_reach.has_value(),
                      .from = passage.from,
                      .to = passage.to,
                      .bed = bed_of(day, passage),
                      .lake = passage.lake.has_value()};
  if (passage.lake && !day.river.lakes[*passage.lake].name.empty()) reach.name = day.river.lakes[*passage.lake].name;
  if (graph_reach.side_channel) reach.side_channel = day.river.side_channels[*graph_reach.side_channel].name;
  reach.flow_source = day.flows.source[passage.reach];
  reach.temperature_source = day.temperatures.source[passage.reach];
  const Instant noon = hours[hours.size() / 2];
  const auto flow = known_flow(day, passage.reach, noon);
  const Channel channel = channel_of(day.river, graph_reach, flow.has_value() ? flow->middle : Discharge{});
  reach.channel_guessed = channel.guessed;
  const std::vector<Water>& waters = waters_of(day, passage);
  for (const Instant t : hours) reach.hours.push_back(reach_hour(day, passage, waters, t));
  add_waters(day, passage, waters, reach);
  return reach;
}

}  // namespace

RiverOfDay river_of_day(const DayInputs& in) {
  const WaterOfDay water = water_of_day(in);
  const RiverDay day = river_day(in, water);
  RiverOfDay out;
  out.facts.made_at = in.now;
  out.facts.day = in.day;
  out.facts.time_zone = in.river.time_zone;
  out.facts.outlooks = water.outlooks;
  add_day_facts(day, out.facts);
  const std::vector<Instant> hours = hours_of(day);
  for (const Passage& passage : all_passages(day)) out.reaches.push_back(believed(day, passage, hours));
  return out;
}

}  // namespace floatwright
