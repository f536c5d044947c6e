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
  river.notes.front().from = river_mile(46);  // described from the dam on
  ledge = front_at(silent_gauges(river), "The Ledge");
  const double expected = hours_after_leaving(ledge, ledge.expected);
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.earliest), 0.8 * expected, 0.01);
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.latest), 1.6 * expected, 0.01);
  river.notes.clear();  // nobody described the channel
  ledge = front_at(silent_gauges(river), "The Ledge");
  EXPECT_NEAR(hours_after_leaving(ledge, ledge.earliest), 0.5 * hours_after_leaving(ledge, ledge.expected), 0.01);
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
  EXPECT_NEAR(wave.timed, 0.5, 1e-9);
  EXPECT_NEAR(in_hours(wave.path.travel), 3.0 + 0.5 * in_hours(by_channel), 1e-9);
}
// heron at mile 45.2 and ferry at 28.9, 16.3 miles apart.
River with_lag(double hours_at_50, double exponent = 0.34) {
  River river = bare_river(0, 0);
  river.fitted_lags = {
      {"heron", "ferry", cubic_metres_per_second(50), floatwright::hours(hours_at_50), exponent, 1.0, 40}};
  return river;
}
double hours_between(const River& river, double from, double to, double flow) {
  const auto path =
      wave_between(river, river_graph(river), river_mile(from), river_mile(to), cubic_metres_per_second(flow));
  return in_hours(path.travel);
}
TEST(Wave, TakesTheLagOfTwoGaugesWhereNoWaveTimeIsTyped) {
  River river = with_lag(6.0, 0.25);
  EXPECT_NEAR(hours_between(river, 45.2, 28.9, 50), 6.0, 1e-6);
  EXPECT_NEAR(hours_between(river, 45.2, 28.9, 80), 6.0 * std::pow(50.0 / 80.0, 0.25), 1e-6);
  EXPECT_NEAR(hours_between(river, 45.2, 40.2, 50), 6.0 * 5.0 / 16.3, 1e-3);  // its share by length
  river.wave_times = {{river_mile(46), river_mile(28.9), cubic_metres_per_second(50), floatwright::hours(5.2)}};
  EXPECT_NEAR(hours_between(river, 45.2, 28.9, 50), 5.2 * 16.3 / 17.1, 1e-3);
}
TEST(Wave, TakesTheNearerTwoOfThreeGauges) {
  River river = with_lag(6.0);
  river.gauges.push_back(gauge_site("mill", 40.2, 0));
  river.fitted_lags.push_back({"heron", "mill", cubic_metres_per_second(50), floatwright::hours(1.0), 0.34, 1.0, 40});
  EXPECT_NEAR(hours_between(river, 45.2, 40.2, 50), 1.0, 1e-6);
  EXPECT_NEAR(hours_between(river, 40.2, 28.9, 50), 6.0 * 11.3 / 16.3, 1e-3);
}
TEST(Wave, TakesNoLagAcrossADamOrALakeNorOfAnUnknownGauge) {
  const double by_channel = hours_between(bare_river(0, 0), 45.2, 42, 50);
  River dammed = with_lag(20.0);
  dammed.dams = {heron_dam()};
  dammed.dams[0].place = river_mile(36);
  EXPECT_NEAR(hours_between(dammed, 45.2, 42, 50), by_channel, 1e-6);
  River laked = with_lag(20.0);
  laked.lakes.push_back({});
  laked.lakes[0].from = river_mile(36);
  laked.lakes[0].to = river_mile(35);
  EXPECT_NEAR(hours_between(laked, 45.2, 42, 50), by_channel, 1e-6);
  River renamed = with_lag(20.0);
  renamed.fitted_lags[0].to = "nowhere";
  EXPECT_NEAR(hours_between(renamed, 45.2, 42, 50), by_channel, 1e-6);
}
TEST(Wave, SpreadsAsTheLagWasFitted) {
  River river = with_lag(6.0);
  const auto spread = [&] {
    return wave_between(river, river_graph(river), river_mile(45.2), river_mile(28.9), cubic_metres_per_second(50))
        .spread;
  };
  const Length once = spread();
  river.fitted_lags[0].spread = 2.0;
  EXPECT_NEAR(spread() / once, 2.0, 1e-9);
}

// heron read `before` until four hours ago and `after` since three hours ago.
Routed seen_at_heron(std::vector<Release> schedule = {}, double before = 30, double after = 60) {
  River river = with_lag(6.0);
  river.dams = {heron_dam(std::move(schedule))};
  return run_of(river, {outlook_of("heron", [=](double h) { return h <= -4 ? before : after; }), silent("ferry")});
}
TEST(Wave, IsTakenFromTheGaugeBelowADamWhoseReleasesNobodyTyped) {
  const Routed run = seen_at_heron();
  const DamFront mill = front_at(run, "mill");
  ASSERT_EQ(mill.place_name, "mill");
  EXPECT_TRUE(mill.seen_at_gauge);
  EXPECT_NEAR(mill.before.si(), 30, 1e-6);
  EXPECT_NEAR(mill.after.si(), 60, 1e-6);
  const double travel = 6.0 * 5.0 / 16.3 * std::pow(50.0 / 45.0, 0.34);  // from heron, where it was half way at -3.5 h
  EXPECT_NEAR(std::chrono::duration<double>(mill.expected - kNow).count() / 3600.0, -3.5 + travel, 0.01);
  EXPECT_LT(mill.leaves, kNow - minutes{210});
  EXPECT_GE(mill.expected - mill.earliest, minutes{45});  // it was read every hour
  EXPECT_EQ(front_at(run, "ramp").place_name, "");        // above the gauge it has passed
}
TEST(Wave, IsTakenFromTheScheduleWhereThatTellsAChange) {
  const Routed run =
      seen_at_heron({{kNow - hours{100}, cubic_metres_per_second(30)}, {kNow + hours{2}, cubic_metres_per_second(60)}});
  EXPECT_FALSE(front_at(run, "mill").seen_at_gauge);
  EXPECT_EQ(front_at(run, "mill").leaves, kNow + hours{2});
}
TEST(Wave, IsNotMadeOfSmallOrNaturalChanges) {
  EXPECT_TRUE(seen_at_heron({}, 30, 33).flows.fronts.empty());
  River river = with_lag(6.0);
  river.dams = {heron_dam()};
  river.dams[0].ramping = false;
  const auto rise = outlook_of("heron", [](double h) { return h <= -4 ? 30.0 : 60.0; });
  EXPECT_TRUE(run_of(river, {rise, silent("ferry")}).flows.fronts.empty());
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
