#pragma once
// A day of the small river with flow and temperature set by hand, so that the trip is tested without the rooms that
// forecast and route: the same in every reach, a value an hour.
#include <functional>
#include <memory>

#include "engine/trip/river_day.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {

struct HandMadeDay {
  HandMadeDay();
  HandMadeDay(HandMadeDay&&) noexcept;
  ~HandMadeDay();

  River river = small_river();
  Settings settings = small_day().settings;
  Tackle tackle = small_tackle();
  Judgement judgement{};
  std::vector<GaugeRecord> records{four_days({})};
  std::function<PerCase<Discharge>(Instant)> flow = [](Instant) { return same(1800.0); };
  std::function<PerCase<Temperature>(Instant)> water = [](Instant) { return warm(50.0); };
  std::vector<DamFront> fronts{};
  Instant now = kNow;
  std::chrono::year_month_day date = kDay;
  std::optional<Weather> weather{};

  static PerCase<Discharge> same(double cfs) { return spread(cfs, cfs, cfs); }
  static PerCase<Discharge> spread(double low, double middle, double high) {
    return {cubic_feet_per_second(low), cubic_feet_per_second(middle), cubic_feet_per_second(high)};
  }
  static PerCase<Temperature> warm(double f) { return {fahrenheit(f), fahrenheit(f), fahrenheit(f)}; }

  // Valid until the next call.
  const RiverDay& day();

 private:
  void add_reach(const TimeGrid& grid);

  RiverGraph graph_;
  RiverFlows flows_;
  RiverTemperatures temperatures_;
  LikelyWaters likely_;
  std::unique_ptr<RiverDay> made_;
};

}  // namespace floatwright
