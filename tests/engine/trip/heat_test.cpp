#include "engine/trip/heat.hpp"

#include <gtest/gtest.h>

#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

const RiverPlace kUpper = river_mile(12.0), kLower = river_mile(0.5);

// Rises 2 F an hour from 60 F at 06:00 in the middle case; the high case is 3 F more.
PerCase<Temperature> warming(Instant t) {
  const double f = 60.0 + 2.0 * in_hours(duration(t - local(6)));
  return {fahrenheit(f - 3.0), fahrenheit(f), fahrenheit(f + 3.0)};
}

TEST(HeatStop, IsHalfAnHourBeforeTheHighCaseReachesTheLimit) {
  HandMadeDay made;
  made.water = warming;
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  const HeatOfTrip heat = heat_of(made.day(), times, heat_limits(made.river, made.settings));
  ASSERT_TRUE(heat.stop_by.has_value());
  // 63 F + 2 F an hour reaches 70 F at 09:30; looked at every quarter of an hour.
  EXPECT_NEAR(in_minutes(duration(*heat.stop_by - local(9, 0))), 0.0, 15.0);
}

TEST(HeatLimits, AreLowerForCutthroatAndLowestForBullTrout) {
  River river;
  EXPECT_NEAR(in_fahrenheit(heat_limits(river, {}).stop), 70.0, 1e-9);
  river.fish = {"rainbow", "cutthroat"};
  EXPECT_NEAR(in_fahrenheit(heat_limits(river, {}).stop), 68.0, 1e-9);
  river.fish = {"cutthroat", "bull_trout"};
  EXPECT_NEAR(in_fahrenheit(heat_limits(river, {}).stop), 60.0, 1e-9);
}

TEST(HeatLimits, AreNotRaisedByTheSettings) {
  Settings lax;
  lax.heat_stop = fahrenheit(80.0);
  lax.heat_caution = fahrenheit(79.0);
  EXPECT_NEAR(in_fahrenheit(heat_limits({}, lax).stop), 70.0, 1e-9);
  EXPECT_NEAR(in_fahrenheit(heat_limits({}, lax).caution), 67.0, 1e-9);
  Settings strict;
  strict.heat_stop = fahrenheit(66.0);
  EXPECT_NEAR(in_fahrenheit(heat_limits({}, strict).stop), 66.0, 1e-9);
  EXPECT_LE(heat_limits({}, strict).caution, heat_limits({}, strict).stop);
  EXPECT_TRUE(heat_limits({}, strict).stop_typed);
  EXPECT_FALSE(heat_limits({}, lax).stop_typed);
}

TEST(HeatStop, RulesOutALaunchAfterIt) {
  HandMadeDay made;
  made.water = [](Instant) { return HandMadeDay::warm(72.0); };
  const HeatLimits limits = heat_limits(made.river, made.settings);
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  EXPECT_EQ(heat_limit(heat_of(made.day(), times, limits), limits, times.launch)->kind, LimitKind::TooWarm);
}

TEST(HeatStop, IsNotLiftedByACoolEvening) {
  HandMadeDay made;
  made.water = [](Instant t) { return HandMadeDay::warm(t < local(16) ? 72.0 : 64.0); };
  const HeatLimits limits = heat_limits(made.river, made.settings);
  const Timetable times = timetable(made.day(), kUpper, river_mile(6.0), local(17));
  EXPECT_TRUE(heat_limit(heat_of(made.day(), times, limits), limits, times.launch).has_value());
}

TEST(HeatStop, IsToldOfEachPlaceByTheHourOfTheFirst) {
  HandMadeDay made;
  made.water = warming;
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  const HeatLimits limits = heat_limits(made.river, made.settings);
  const HeatOfTrip heat = heat_of(made.day(), times, limits);
  std::vector<Caution> told;
  add_heat_cautions(made.day(), heat, limits, told);
  std::vector<std::string> warm;
  for (const TimedPassage& row : times.rows)
    if (row.leave >= local(9, 30) && (warm.empty() || warm.back() != row.passage.name)) warm.push_back(row.passage.name);
  ASSERT_GE(warm.size(), 2U);
  ASSERT_EQ(told.size(), warm.size());
  for (std::size_t i = 0; i < told.size(); ++i) {
    EXPECT_EQ(told[i].kind, CautionKind::HeatStop);
    EXPECT_EQ(told[i].where, warm[i]);
    EXPECT_EQ(told[i].from, heat.stop_by);
    EXPECT_GE(*told[i].temperature, limits.stop);
  }
  EXPECT_GT(*told[1].at, *told[0].at);
  const std::vector<Caution> page = with_first_heat_stop(told);
  ASSERT_EQ(page.size(), 1U);
  EXPECT_EQ(page[0].where, warm[0]);
}

}  // namespace
}  // namespace floatwright
