#include "engine/routing/fronts.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/release_plan.hpp"
#include "engine/routing/flow_changes.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/routing/stem.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {
namespace {

constexpr double kLeastChange = 0.05;
constexpr Period kLooksBack = std::chrono::hours{12};
constexpr double kLeastSeen = 0.20;  // of the mean flow, for a change that a gauge has shown; judgement

struct NamedPlace {
  RiverPlace place;
  std::string name;
};

std::vector<NamedPlace> places_below(const River& river, RiverPlace upper, RiverPlace lower) {
  std::vector<NamedPlace> places;
  const auto add = [&](RiverPlace place, const std::string& name) {
    if (place <= upper && place >= lower) places.push_back({place, name});
  };
  for (const Access& access : river.accesses) add(access.place, access.name);
  for (const Spot& spot : river.spots) add(spot.place, spot.name);
  for (const Hazard& hazard : river.hazards) add(hazard.place, hazard.what);
  std::stable_sort(places.begin(), places.end(),
                   [](const NamedPlace& a, const NamedPlace& b) { return a.place > b.place; });
  return places;
}

// A wave ends in the next dam's pool or the next lake.
RiverPlace end_of_wave(const River& river, const RiverGraph& graph, const Dam& dam) {
  RiverPlace end = graph.reaches[stem_of(graph).reaches.back()].to;
  for (const Dam& other : river.dams)
    if (other.place < dam.place) end = std::max(end, other.place);
  for (const Lake& lake : river.lakes)
    if (lake.from && *lake.from < dam.place) end = std::max(end, *lake.from);
  return end;
}

struct Travel {
  Duration expected, earliest, latest;

  void add(const ReachWave& wave) {
    const Duration t = wave.path.travel;
    const FrontMargin& untimed = wave.guessed ? kGuessedMargin : kChannelMargin;
    expected = expected + t;
    earliest = earliest + t * (wave.timed * kTimedMargin.earliest + (1.0 - wave.timed) * untimed.earliest);
    latest = latest + t * (wave.timed * kTimedMargin.latest + (1.0 - wave.timed) * untimed.latest);
  }
};

// A change on its way: where and when it was seen to set out, and what passes there on the mean of the window.
struct Wave {
  std::size_t dam = 0;
  RiverPlace from;
  Instant at{}, left_dam{};
  Discharge before, after, usual;
  Duration vague;  // how far off the hour may be
  bool seen_at_gauge = false;

  [[nodiscard]] Discharge flow() const { return front_flow(before, after); }
};

// What the reach carries beside the change: tributaries and unseen inflow, as a mean over the window.
Discharge beside(const RiverFlows& flows, const Wave& wave, std::size_t reach) {
  if (!flows.known[reach] || flows.grid.count == 0) return {};
  return mean_flow(flows.flow.middle[reach]) - wave.usual;
}

Travel travel_to(const River& river, const RiverGraph& graph, const RiverFlows& flows, const Wave& wave,
                 RiverPlace place) {
  Travel travel;
  for (const std::size_t index : stem_of(graph).reaches) {
    const Reach& reach = graph.reaches[index];
    if (reach.from > wave.from || reach.from <= place) continue;
    const Discharge here = std::max(wave.flow() + beside(flows, wave, index), 0.2 * wave.flow());
    travel.add(reach_wave_to(river, reach, place, here, wave.flow()));
  }
  return travel;
}

DamFront front_at(const NamedPlace& at, const Wave& wave, const Travel& travel) {
  DamFront front{wave.dam, at.place, at.name, wave.before, wave.after, wave.left_dam, {}, {}, {}};
  front.seen_at_gauge = wave.seen_at_gauge;
  const Duration margin = kLeastMargin + wave.vague;
  front.earliest = wave.at + period(std::min(travel.earliest, travel.expected - margin));
  front.expected = wave.at + period(travel.expected);
  front.latest = wave.at + period(std::max(travel.latest, travel.expected + margin));
  return front;
}

bool worth_telling(Discharge before, Discharge after) {
  return before > Discharge{} ? std::abs(after / before - 1.0) > kLeastChange : after > Discharge{};
}

std::vector<Wave> typed_waves(const River& river, const RiverFlows& flows, std::size_t dam, Instant now) {
  std::vector<Wave> waves;
  const Dam& typed = river.dams[dam];
  Discharge released;
  for (std::size_t i = 0; i < flows.grid.count && !typed.schedule.empty(); ++i)
    released = released + release_at(typed, flows.grid.at(i)).value_or(typed.schedule.front().flow);
  const Discharge usual = released / std::max(1.0, static_cast<double>(flows.grid.count));
  for (std::size_t i = 1; i < typed.schedule.size(); ++i) {
    const Release& change = typed.schedule[i];
    const Discharge before = typed.schedule[i - 1].flow;
    const bool in_window = change.time >= now - kLooksBack && change.time <= flows.grid.last();
    if (in_window && worth_telling(before, change.flow))
      waves.push_back({dam, typed.place, change.time, change.time, before, change.flow, usual, {}, false});
  }
  return waves;
}

// The nearest gauge below a dam that says what has passed; none across a lake or the next dam.
std::optional<std::size_t> gauge_below(const River& river, const Dam& dam, const std::vector<GaugeOutlook>& outlooks) {
  std::optional<std::size_t> nearest;
  for (std::size_t g = 0; g < river.gauges.size() && g < outlooks.size(); ++g) {
    if (dam_above(river, river.gauges[g]).dam != &dam || !outlooks[g].flow) continue;
    if (!nearest || *river.gauges[g].place > *river.gauges[*nearest].place) nearest = g;
  }
  return nearest;
}

// What the gauge has read since half a day before the oldest change that is still told.
Series<Discharge> seen_at(const GaugeOutlook& outlook, const TimeGrid& grid, Instant now) {
  Series<Discharge> seen;
  for (std::size_t i = 0; i < grid.count && i < outlook.flow->middle.size(); ++i) {
    if (grid.at(i) < now - 2 * kLooksBack || grid.at(i) >= outlook.forecast_from) continue;
    seen.times.push_back(grid.at(i));
    seen.values.push_back(outlook.flow->middle[i]);
  }
  return seen;
}

std::vector<Wave> seen_waves(const River& river, const RiverGraph& graph, const std::vector<GaugeOutlook>& outlooks,
                             const RiverFlows& flows, std::size_t dam, Instant now) {
  std::vector<Wave> waves;
  const auto gauge = gauge_below(river, river.dams[dam], outlooks);
  if (!gauge) return waves;
  const Series<Discharge> seen = seen_at(outlooks[*gauge], flows.grid, now);
  const RiverPlace place = *river.gauges[*gauge].place;
  for (const FlowChange& change : flow_changes(seen, kLeastSeen * mean_flow(seen.values))) {
    if (change.half_way < now - kLooksBack || !worth_telling(change.before, change.after)) continue;
    Wave wave{dam,
              place,
              change.half_way,
              {},
              change.before,
              change.after,
              mean_flow(outlooks[*gauge].flow->middle),
              0.5 * duration(flows.grid.step),
              true};
    const Duration from_dam = wave_between(river, graph, river.dams[dam].place, place, wave.flow()).travel;
    wave.left_dam = wave.at - period(from_dam);
    waves.push_back(wave);
  }
  return waves;
}

}  // namespace

std::vector<DamFront> dam_fronts(const River& river, const RiverGraph& graph, const std::vector<GaugeOutlook>& outlooks,
                                 const RiverFlows& flows, Instant now) {
  std::vector<DamFront> fronts;
  if (stem_of(graph).reaches.empty()) return fronts;
  for (std::size_t d = 0; d < river.dams.size(); ++d) {
    auto waves = typed_waves(river, flows, d, now);
    if (waves.empty()) waves = seen_waves(river, graph, outlooks, flows, d, now);
    const RiverPlace end = end_of_wave(river, graph, river.dams[d]);
    for (const Wave& wave : waves)
      for (const NamedPlace& at : places_below(river, wave.from, end))
        fronts.push_back(front_at(at, wave, travel_to(river, graph, flows, wave, at.place)));
  }
  return fronts;
}

}  // namespace floatwright
