#include "engine/routing/fronts.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/release_plan.hpp"
#include "engine/routing/mean_flow.hpp"
#include "engine/routing/stem.hpp"
#include "engine/routing/wave_travel.hpp"

namespace floatwright {
namespace {

constexpr double kLeastChange = 0.05;
constexpr Period kLooksBack = std::chrono::hours{12};
constexpr Duration kLeastMargin = Duration::from_si(900.0);
struct Margin {
  double earliest, latest;  // times the expected travel
};
constexpr Margin kTyped{0.85, 1.2}, kByChannel{0.8, 1.6};

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
    expected = expected + t;
    earliest = earliest + t * (wave.typed * kTyped.earliest + (1.0 - wave.typed) * kByChannel.earliest);
    latest = latest + t * (wave.typed * kTyped.latest + (1.0 - wave.typed) * kByChannel.latest);
  }
};

// What the reach carries beside the release: tributaries and unseen inflow, as a mean over the window.
Discharge beside_release(const RiverFlows& flows, const Dam& dam, std::size_t reach) {
  if (!flows.known[reach] || flows.grid.count == 0) return {};
  Discharge released;
  for (std::size_t i = 0; i < flows.grid.count; ++i)
    released = released + release_at(dam, flows.grid.at(i)).value_or(dam.schedule.front().flow);
  return mean_flow(flows.flow.middle[reach]) - released / static_cast<double>(flows.grid.count);
}

Travel travel_to(const River& river, const RiverGraph& graph, const RiverFlows& flows, const Dam& dam,
                 Discharge release, RiverPlace place) {
  Travel travel;
  for (const std::size_t index : stem_of(graph).reaches) {
    const Reach& reach = graph.reaches[index];
    if (reach.from > dam.place || reach.from <= place) continue;
    const Discharge here = std::max(release + beside_release(flows, dam, index), 0.2 * release);
    travel.add(reach_wave_to(river, reach, place, here, release));
  }
  return travel;
}

DamFront front_at(const NamedPlace& at, std::size_t dam, const Release& change, Discharge before,
                  const Travel& travel) {
  DamFront front{dam, at.place, at.name, before, change.flow, change.time, {}, {}, {}};
  const Duration early = std::min(travel.earliest, travel.expected - kLeastMargin);
  const Duration late = std::max(travel.latest, travel.expected + kLeastMargin);
  front.earliest = change.time + period(early);
  front.expected = change.time + period(travel.expected);
  front.latest = change.time + period(late);
  return front;
}

bool worth_telling(Discharge before, Discharge after) {
  return before > Discharge{} ? std::abs(after / before - 1.0) > kLeastChange : after > Discharge{};
}

}  // namespace

std::vector<DamFront> dam_fronts(const River& river, const RiverGraph& graph, const RiverFlows& flows, Instant now) {
  std::vector<DamFront> fronts;
  if (stem_of(graph).reaches.empty()) return fronts;
  for (std::size_t d = 0; d < river.dams.size(); ++d) {
    const Dam& dam = river.dams[d];
    const auto places = places_below(river, dam.place, end_of_wave(river, graph, dam));
    for (std::size_t i = 1; i < dam.schedule.size(); ++i) {
      const Release& change = dam.schedule[i];
      const Discharge before = dam.schedule[i - 1].flow;
      if (change.time < now - kLooksBack || change.time > flows.grid.last() || !worth_telling(before, change.flow))
        continue;
      const Discharge speed_at = change.flow > before ? (before + change.flow) / 2.0 : before;
      for (const NamedPlace& at : places)
        fronts.push_back(front_at(at, d, change, before, travel_to(river, graph, flows, dam, speed_at, at.place)));
    }
  }
  return fronts;
}

}  // namespace floatwright
