#pragma once
// A day of the small river with flow and temperature set by hand, so that the trip is tested without the rooms that
// forecast and route: the same in every reach, a value an hour.
#include <functional>
#include <memory>

#include "engine/trip/river_day.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {

struct HandMadeDay {
  River river = small_river();
  Settings settings = small_day().settings;
  Tackle tackle = small_tackle();
  Judgement judgement{};
  std::vector<GaugeRecord> records{four_days({})};
  std::function<PerCase<Discharge>(Instant)> flow = [](Instant) { return same(1800.0); };
  std::function<PerCase<Temperature>(Instant)> water = [](Instant) { return warm(50.0); };
  std::vector<DamFront> fronts{};
  Instant now = kNow;

  static PerCase<Discharge> same(double cfs) { return spread(cfs, cfs, cfs); }
  static PerCase<Discharge> spread(double low, double middle, double high) {
    return {cubic_feet_per_second(low), cubic_feet_per_second(middle), cubic_feet_per_second(high)};
  }
  static PerCase<Temperature> warm(double f) { return {fahrenheit(f), fahrenheit(f), fahrenheit(f)}; }

  // Valid until the next call.
  const RiverDay& day() {
    graph_ = river_graph(river);
    const TimeGrid grid{local(0) - std::chrono::hours{24}, std::chrono::hours{1}, 55};
    flows_ = RiverFlows{};
    flows_.grid = grid;
    flows_.fronts = fronts;
    temperatures_ = RiverTemperatures{};
    temperatures_.grid = grid;
    for (std::size_t r = 0; r < graph_.reaches.size(); ++r) add_reach(grid);
    made_ = std::make_unique<RiverDay>(
        RiverDay{river, graph_, settings, tackle, judgement, records, flows_, temperatures_, kDay, now});
    return *made_;
  }

 private:
  void add_reach(const TimeGrid& grid) {
    std::vector<Discharge> low, middle, high;
    std::vector<PerCase<Temperature>> temperature;
    for (std::size_t i = 0; i < grid.count; ++i) {
      const auto q = flow(grid.at(i));
      low.push_back(q.low);
      middle.push_back(q.middle);
      high.push_back(q.high);
      temperature.push_back(water(grid.at(i)));
    }
    flows_.flow.low.push_back(low);
    flows_.flow.middle.push_back(middle);
    flows_.flow.high.push_back(high);
    flows_.known.push_back(true);
    flows_.source.emplace_back();
    temperatures_.reach.push_back(temperature);
    temperatures_.source.emplace_back();
  }

  RiverGraph graph_;
  RiverFlows flows_;
  RiverTemperatures temperatures_;
  std::unique_ptr<RiverDay> made_;
};

}  // namespace floatwright
