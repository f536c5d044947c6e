#include "engine/coverage/water_seconds.hpp"

#include <algorithm>
#include <cmath>

#include "engine/trip/met_water.hpp"
#include "engine/water/described.hpp"

namespace floatwright {
namespace {

constexpr double kPulledStep = 0.1, kDriftedStep = 0.025;  // of ln(m3/s)
constexpr double kTemperatureStep = 2.0;                   // C
constexpr std::size_t kFlowsTogether = 4;
constexpr Period kHour = std::chrono::hours{1};

double flow_step(WaysFished ways) { return ways == WaysFished::Pulled ? kPulledStep : kDriftedStep; }

// A river that carries the same flow and warmth everywhere, and nothing beside the stem.
RiverOnDate even_river(const RiverGraph& graph, Instant noon, Discharge flow, std::optional<Temperature> warmth) {
  RiverOnDate even{.noon = noon, .flows = {}, .temperatures = {}};
  even.flows.grid = even.temperatures.grid = {noon, kHour, 1};
  FlowRows rows;
  for (const Reach& reach : graph.reaches) {
    rows.push_back({reach.main_thread ? flow : Discharge{}});
    even.flows.known.push_back(true);
    even.flows.source.emplace_back();
    Measured<std::vector<PerCase<Temperature>>> there = Absent{"no water temperature on record that day"};
    if (warmth) there = std::vector<PerCase<Temperature>>{{*warmth, *warmth, *warmth}};
    even.temperatures.reach.push_back(std::move(there));
    even.temperatures.source.emplace_back();
  }
  even.flows.flow = {rows, rows, rows};
  return even;
}

void add(SecondsByMethod& sum, const SecondsByMethod& seconds, double weight) {
  for (const auto& [method, lines] : seconds) {
    auto& row = sum[method];
    row.resize(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
      row[i].seconds += weight * lines[i].seconds;
      row[i].efficiency += weight * lines[i].efficiency;
    }
  }
}

}  // namespace

Measured<WaterToFish> water_at(const RecordAsked& asked, const Passage& passage, std::size_t water, Discharge flow,
                               std::optional<Temperature> warmth) {
  static const std::vector<GaugeRecord> kNoReadings;
  Settings settings = asked.settings;
  settings.visibility.reset();  // typed of one morning
  const RiverOnDate even = even_river(asked.graph, asked.first + std::chrono::hours{12}, flow, warmth);
  const RiverDay day{asked.river, asked.graph, settings,          asked.tackle, asked.judgement,
                     kNoReadings, even.flows,  even.temperatures, asked.first,  even.noon};
  auto met = met_water(day, passage, waters_of(asked.river, asked.graph.reaches[passage.reach])[water], even.noon).to_fish;
  if (met.has_value()) {
    met.value().hatch = true;
    met.value().sun_elevation.reset();
  }
  return met;
}

WaterSeconds::WaterSeconds(const RecordAsked& asked, const ReachDays& record, const LinesAtHand& lines)
    : asked_(asked), record_(record), lines_(lines) {
  for (const ReachDay& day : record.days) {
    const auto& waters = waters_of(asked.river, asked.graph.reaches[record.reaches[day.reach].reach]);
    for (std::size_t water = 0; water < waters.size(); ++water)
      for (const WaysFished ways : {WaysFished::Pulled, WaysFished::Drifted})
        for (const Corner& corner : corners(ways, day, water)) found_[corner.node][corner.warmth];
  }
  for (auto node = found_.begin(); node != found_.end(); ++node) {
    const auto water_of = [](const FoundNode& of) {
      const auto& [ways, reach, water, flow] = of->first;
      return std::tuple(ways, reach, water);
    };
    const bool goes_on =
        !runs_.empty() && runs_.back().size() < kFlowsTogether && water_of(runs_.back().front()) == water_of(node);
    if (!goes_on) runs_.emplace_back();
    runs_.back().push_back(node);
  }
}

void WaterSeconds::work_out(std::size_t run) {
  std::vector<WaterAtWarmths> waters;
  std::vector<std::vector<FishedWater*>> answers;  // by water and warmth
  const auto ask = [&](const WaterToFish& water, Measured<Temperature> warmth, FishedWater& found, bool apart) {
    if (apart) waters.push_back({water, {}}), answers.emplace_back();
    waters.back().warmths.push_back(std::move(warmth));
    answers.back().push_back(&found);
  };
  for (const auto& node : runs_[run]) {
    auto& [there, by_warmth] = *node;
    const auto& [ways, reach, water, flow] = there;
    const Discharge discharge = cubic_metres_per_second(std::exp(flow_step(ways) * flow));
    const auto met = water_at(asked_, record_.reaches[reach], water, discharge, std::nullopt);
    bool apart = true;  // from the warmth before: it is another water, or was one whose warmth is not known
    for (auto& [step, found] : by_warmth) {
      if (!met.has_value()) {
        found.why_unknown = met.why_absent();
        continue;
      }
      const bool known = step != kUnknownWarmth;
      ask(*met, known ? Measured<Temperature>(celsius(kTemperatureStep * step)) : met->temperature, found, apart);
      apart = !known;
    }
  }
  auto seconds = lines_.seconds_in(waters, std::get<WaysFished>(runs_[run].front()->first));
  for (std::size_t w = 0; w < waters.size(); ++w)
    for (std::size_t i = 0; i < answers[w].size(); ++i) answers[w][i]->seconds = std::move(seconds[w][i]);
}

std::vector<WaterSeconds::Corner> WaterSeconds::corners(WaysFished ways, const ReachDay& day, std::size_t water) {
  const double flow = std::log(in_cubic_metres_per_second(day.flow)) / flow_step(ways);
  const double warmth = day.temperature ? in_celsius(*day.temperature) / kTemperatureStep : 0.0;
  const double flow_below = std::floor(flow), warmth_below = std::floor(warmth);
  std::vector<Corner> all;
  for (const int f : {0, 1}) {
    for (const int t : {0, 1}) {
      const double along_flow = 1.0 - std::abs(flow - flow_below - f), along_warmth = 1.0 - std::abs(warmth - warmth_below - t);
      const double weight = along_flow * along_warmth;
      const int at_warmth = day.temperature ? static_cast<int>(warmth_below) + t : kUnknownWarmth;
      if (weight > 0.0) all.push_back({{ways, day.reach, water, static_cast<int>(flow_below) + f}, at_warmth, weight});
    }
  }
  return all;
}

// Where a corner has no answer the nearest one decides: what lies between known and unknown water is not told finer.
void WaterSeconds::add_between(FishedWater& sum, const std::vector<Corner>& around) const {
  const auto found = [&](const Corner& corner) -> const FishedWater& { return found_.at(corner.node).at(corner.warmth); };
  const bool all_known = std::ranges::all_of(around, [&](const Corner& c) { return found(c).why_unknown.empty(); });
  if (all_known) {
    for (const Corner& corner : around) add(sum.seconds, found(corner).seconds, corner.weight);
    return;
  }
  const FishedWater& nearest = found(*std::ranges::max_element(around, {}, &Corner::weight));
  add(sum.seconds, nearest.seconds, 1.0);
  if (!nearest.why_unknown.empty()) sum.why_unknown = nearest.why_unknown;
}

FishedWater WaterSeconds::at(const ReachDay& day, std::size_t water) const {
  FishedWater between;
  for (const WaysFished ways : {WaysFished::Pulled, WaysFished::Drifted}) add_between(between, corners(ways, day, water));
  return between;
}

}  // namespace floatwright
