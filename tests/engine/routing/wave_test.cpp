#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "engine/routing/wave_travel.hpp"
#include "small_river.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

River with_release(double before, double after) {
  River river = bare_river(0, 0);
  river.dams = {heron_dam(
      {{kNow - hours{100}, cubic_metres_per_second(before)}, {kNow + hours{6}, cubic_metres_per_second(after)}})};
  river.wave_times = {{river_mile(46), river_mile(28.9), cubic_metres_per_second(50), floatwright::hours(5.2)}};
  river.hazards = {{"The Ledge", river_mile(28.9), "STOP ABOVE.", std::nullopt, std::nullopt, true, std::nullopt}};
  return river;
}
Routed silent_gauges(const River& river) { return run_of(river, {silent("heron"), silent("ferry")}); }
DamFront front_at(const Routed& run, const std::string& name) {
  for (const DamFront& front : run.flows.fronts)
    if (front.place_name == name) return front;
  return {};
}
double hours_after_leaving(const DamFront& front, Instant t) {
  return std::chrono::duration<double, std::ratio<3600>>(t - front.leaves).count();
}

TEST(Wave, ArrivesAtTheTypedTimeScaledByTheFlow) {
  const Routed drop = silent_gauges(with_release(50, 30));  // a drop runs at the higher flow, that of the typed time
  EXPECT_NEAR(hours_after_leaving(front_at(drop, "The Ledge"), front_at(drop, "The Ledge").expected), 5.2, 0.01);
  const Routed rise = silent_gauges(with_release(50, 80));  // a rise at the mean, 65
  EXPECT_NEAR(hours_after_leaving(front_at(rise, "The Ledge"), front_at(rise, "The Ledge").expected),
              5.2 * std::pow(50.0 / 65.0, 0.34), 0.01);
}
TEST(Wave, HasAnEarliestAndALatestByHowItsTimeIsKnown) {
  River river = with_release(50, 30);
  DamFront ledge = front_at(silent_gauges(river), "The Ledge");
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.earliest), 5.2 * 0.85, 0.01);
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.latest), 5.2 * 1.2, 0.01);
  river.wave_times.clear();
  ledge = front_at(silent_gauges(river), "The Ledge");
  const double expected = hours_after_leaving(ledge, ledge.expected);
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.earliest), 0.8 * expected, 0.01);
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.latest), 1.6 * expected, 0.01);
}
TEST(Wave, IsNeverToldCloserThanAQuarterOfAnHour) {
  const DamFront ramp = front_at(silent_gauges(with_release(50, 30)), "ramp");
  EXPECT_GE(ramp.expected - ramp.earliest, minutes{15});
  EXPECT_GE(ramp.latest - ramp.expected, minutes{15});
}
TEST(Wave, ComesLaterTheFartherDown) {
  const Routed run = silent_gauges(with_release(50, 30));
  EXPECT_LT(front_at(run, "mill").expected, front_at(run, "bar").expected);
  EXPECT_LT(front_at(run, "bar").expected, front_at(run, "quarry").expected);
}
TEST(Wave, OfFivePercentOrLessIsNotTold) { EXPECT_TRUE(silent_gauges(with_release(50, 52)).flows.fronts.empty()); }
TEST(Wave, OfYesterdayIsNotTold) {
  River river = with_release(50, 30);
  river.dams[0].schedule[1].time = kNow - hours{13};
  EXPECT_TRUE(silent_gauges(river).flows.fronts.empty());
}
TEST(Wave, EndsInTheNextLake) {
  River river = with_release(50, 30);
  Lake lake;
  lake.name = "Mill Pond";
  lake.from = river_mile(42);
  lake.to = river_mile(41);
  river.lakes = {lake};
  const Routed run = silent_gauges(river);
  EXPECT_EQ(front_at(run, "ramp").place_name, "ramp");
  EXPECT_EQ(front_at(run, "bar").place_name, "");
}
// The routed flow passes half way through the change when the front is told, to within a step of the grid.
TEST(Wave, IsHalfWayThroughInTheRoutedFlowWhenTheFrontIsTold) {
  River river = with_release(50, 46);  // small, so that the routing's fixed mean flow is near that of the front
  river.dams[0].schedule[1].flow = cubic_metres_per_second(47);
  const Routed run = silent_gauges(river);
  const std::size_t reach = *run.graph.gauge_reach[1];
  Instant half_way = kNow;
  while (flow_at(run.flows, reach, half_way).middle.si() > 48.5) half_way += minutes{5};
  EXPECT_NEAR(hours_after_leaving({{}, {}, {}, {}, {}, kNow + hours{6}, {}, {}, {}}, half_way), 5.2, 0.5);
}
TEST(Wave, TakesTheTypedTimeForItsPartOfAReachOnly) {
  River river = bare_river(0, 0);
  const RiverGraph graph = river_graph(river);
  const Reach& reach = graph.reaches[*graph.at(river_mile(43))];
  const auto q = cubic_metres_per_second(50);
  const Duration by_channel = reach_wave(river, reach, q, q).path.travel;
  const RiverPlace middle = RiverPlace::from_si((reach.from.si() + reach.to.si()) / 2);
  river.wave_times = {{reach.from, middle, q, floatwright::hours(3)}};
  const ReachWave wave = reach_wave(river, reach, q, q);
  EXPECT_NEAR(wave.typed, 0.5, 1e-9);
  EXPECT_NEAR(in_hours(wave.path.travel), 3.0 + 0.5 * in_hours(by_channel), 1e-9);
}
TEST(Wave, SpeedsUpWithTheFlow) {
  const River river = bare_river(0, 0);
  const RiverGraph graph = river_graph(river);
  const Reach& reach = graph.reaches[*graph.at(river_mile(43))];
  const auto travel = [&](double q) {
    return in_hours(reach_wave(river, reach, cubic_metres_per_second(q), cubic_metres_per_second(q)).path.travel);
  };
  EXPECT_NEAR(travel(25) / travel(50), std::pow(2.0, 0.34), 0.01);
}

}  // namespace
}  // namespace floatwright
