#include "engine/trip/timetable.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/trip/planned_reach.hpp"
#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

constexpr double kSecond = 1.0 / 3600.0;  // h
const RiverPlace kUpper = river_mile(12.0), kMiddle = river_mile(6.0), kLower = river_mile(0.5);

TEST(TimeAfloat, IsTheGuidesAtTheFlowOfHisNote) {
  HandMadeDay made;
  EXPECT_NEAR(in_hours(time_afloat(made.day(), kUpper, kMiddle, local(8))), 2.5, kSecond);
  EXPECT_NEAR(in_hours(time_afloat(made.day(), kUpper, kLower, local(8))), 4.8, kSecond);
}

TEST(TimeAfloat, OfHalfTheNotesLengthIsHalfItsTime) {
  HandMadeDay made;
  EXPECT_NEAR(in_hours(time_afloat(made.day(), kUpper, river_mile(9.0), local(8))), 1.25, kSecond);
}

// The published mean exponent of speed at a station is 0.34 (Leopold & Maddock 1953): twice the flow, 2^0.34 the speed.
TEST(TimeAfloat, ShortensWithTheMeanSpeedAtAHigherFlow) {
  HandMadeDay made;
  made.flow = [](Instant) { return HandMadeDay::same(3600.0); };
  EXPECT_NEAR(in_hours(time_afloat(made.day(), kUpper, kMiddle, local(8))), 2.5 / std::pow(2.0, 0.34), 0.02);
}

TEST(Timetable, HasFloatStopsLunchAndPortageAndNothingElse) {
  HandMadeDay made;
  Hazard ledge;
  ledge.what = "The Shelf";
  ledge.place = river_mile(8.0);
  ledge.must_portage = true;
  ledge.portage_time = minutes(40.0);
  made.river.hazards = {ledge};
  made.settings.stops_per_trip = hours(1.0);
  made.settings.lunch = minutes(30.0);
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  EXPECT_NEAR(in_hours(duration(times.end - times.launch)), 4.8 + 1.0 + 0.5 + 40.0 / 60.0, 10 * kSecond);
}

TEST(Timetable, StopsOnceWhereTwoHazardsAreCarriedRound) {
  HandMadeDay made;
  Hazard ledge;
  ledge.what = "The Shelf";
  ledge.how = "PORTAGE RIGHT.";
  ledge.place = river_mile(8.0);
  ledge.must_portage = true;
  ledge.portage_time = minutes(40.0);
  Hazard cable = ledge;
  cable.what = "The Cable";
  cable.how = "";
  cable.portage_time = minutes(20.0);
  made.river.hazards = {ledge, cable};
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  const auto stop = std::ranges::find_if(times.rows, [](const TimedPassage& row) { return row.portage > Duration{}; });
  ASSERT_NE(stop, times.rows.end());
  EXPECT_NEAR(in_minutes(stop->portage), 40.0, 1e-9);
  EXPECT_EQ(planned_reach(made.day(), *stop).stop_sentence, "The Shelf: PORTAGE RIGHT. The Cable: PORTAGE.");
}

// A front that comes after the middle of a row, at whose hour the row is read, is met in it all the same.
TEST(Timetable, TellsTheRowsInWhichTheWaterComesUp) {
  HandMadeDay made;
  const auto any_rises = [&] {
    const auto rows = timetable(made.day(), kUpper, kLower, local(7, 30)).rows;
    return std::any_of(rows.begin(), rows.end(), [](const TimedPassage& row) { return row.passage.rises; });
  };
  EXPECT_FALSE(any_rises());
  Dam dam;
  dam.place = river_mile(15.0);
  made.river.dams = {dam};
  DamFront front;
  front.place = kUpper;
  front.before = cubic_feet_per_second(1400.0);
  front.after = cubic_feet_per_second(1800.0);
  front.leaves = local(7);
  front.earliest = local(9);
  front.latest = local(9, 10);
  made.fronts = {front};
  EXPECT_TRUE(any_rises());
  made.fronts.clear();
  made.flow = [](Instant t) { return HandMadeDay::same(t < local(9) ? 1800.0 : 2400.0); };
  EXPECT_TRUE(any_rises());
}

TEST(Timetable, LeavesSlackAndRoundsUpToTenMinutes) {
  HandMadeDay made;
  made.settings.stops_per_trip = hours(1.0);
  made.settings.lunch = Duration{};
  const Timetable times = timetable(made.day(), kUpper, kMiddle, local(7, 30));  // ends at 11:00
  EXPECT_GE(times.off_by, times.end);
  EXPECT_EQ(times.off_by.time_since_epoch() % std::chrono::minutes{10}, Period{0});
  EXPECT_LE(times.off_by - times.end, std::chrono::minutes{40});
}

TEST(Timetable, ReadsNoRowOfOverTwoHoursAtOneHour) {
  HandMadeDay made;
  for (const TimedPassage& row : timetable(made.day(), kUpper, kLower, local(7, 30)).rows) {
    EXPECT_LE(in_hours(row.afloat), 2.0);
  }
}

TEST(Timetable, GivesEachRowTheWaterThatTheLastOneEndsAt) {
  HandMadeDay made;
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  ASSERT_GE(times.rows.size(), 2u);
  for (std::size_t i = 1; i < times.rows.size(); ++i) {
    EXPECT_EQ(times.rows[i].passage.from, times.rows[i - 1].passage.to);
    EXPECT_EQ(times.rows[i].arrive, times.rows[i - 1].leave);
  }
}

TEST(Timetable, EndsARowWhereAClosureBeginsAndDoesNotFishIt) {
  HandMadeDay made;
  Closure closure;
  closure.from = river_mile(5.0);
  closure.to = river_mile(4.0);
  closure.why = "spawning fish";
  made.river.closures = {closure};
  bool met = false;
  for (const TimedPassage& row : timetable(made.day(), kMiddle, kLower, local(7, 30)).rows) {
    if (row.passage.from != river_mile(5.0)) continue;
    met = true;
    EXPECT_EQ(row.passage.to, river_mile(4.0));
    EXPECT_FALSE(row.fished);
  }
  EXPECT_TRUE(met);
}

TEST(Timetable, FishesAWaterThatIsClosedAtOtherHours) {
  HandMadeDay made;
  Closure closure;
  closure.from = kMiddle;
  closure.to = kLower;
  closure.hours = HoursOfDay{hours(14.0), hours(24.0)};
  closure.why = "afternoons closed";
  made.river.closures = {closure};
  for (const TimedPassage& row : timetable(made.day(), kMiddle, kLower, local(7, 30)).rows) EXPECT_TRUE(row.fished);
  for (const TimedPassage& row : timetable(made.day(), kMiddle, kLower, local(14, 0)).rows) EXPECT_FALSE(row.fished);
}

TEST(Launch, WaitsForCivilDawn) {
  HandMadeDay made;
  made.settings.earliest_launch = hours(3.0);
  const SunDay sun = sun_over(made.day(), kUpper);
  ASSERT_TRUE(sun.civil_dawn.has_value());
  EXPECT_GE(launch_time(made.day(), sun), *sun.civil_dawn);
  EXPECT_LT(launch_time(made.day(), sun) - *sun.civil_dawn, std::chrono::minutes{10});
}

TEST(Launch, IsNotBeforeNowOnTheDayItself) {
  HandMadeDay made;
  made.now = local(9, 3);
  EXPECT_EQ(launch_time(made.day(), sun_over(made.day(), kUpper)), local(9, 10));
}

}  // namespace
}  // namespace floatwright
