// Whole days of the small river worked out with a pencil: every arrival, the hour at which the heat stops the fishing by
// the sine's own formula, the days on which clocks change, and rivers where the sun stays up or does not come.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/trip/heat.hpp"
#include "engine/trip/local_time.hpp"
#include "engine/trip/stretches.hpp"
#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

using std::chrono::year;
const RiverPlace kUpper = river_mile(12.0), kMiddle = river_mile(6.0), kLower = river_mile(0.5);

HandMadeDay with_a_portage() {
  HandMadeDay made;
  Hazard ledge;
  ledge.what = "The Shelf";
  ledge.place = river_mile(8.0);
  ledge.must_portage = true;
  ledge.portage_time = minutes(40.0);
  made.river.hazards = {ledge};
  made.settings.stops_per_trip = hours(1.0);
  made.settings.lunch = minutes(30.0);
  return made;
}

// The guide floats 6 miles in 2.5 h and the next 5.5 in 2.3 h. To the Shelf 4 miles, 1 h 40; below it 2 miles, 50 min; then
// twice 69 min, since no row is over two hours. An hour of stops over 288 min afloat is 12.5 s a minute: 20 min 50 s,
// 10 min 25 s and twice 14 min 22.5 s. Half of the time afloat is reached in the second row: lunch there.
TEST(TimetableByHand, HasEveryArrivalOfThePencil) {
  HandMadeDay made = with_a_portage();
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  ASSERT_EQ(times.rows.size(), 4u);
  const auto at = [](int hour, int minute, int second) { return local(hour, minute) + std::chrono::seconds{second}; };
  const std::vector<Instant> arrive{at(7, 30, 0), at(10, 10, 50), at(11, 41, 15), at(13, 4, 38)};
  const std::vector<Instant> leave{at(9, 30, 50), at(11, 41, 15), at(13, 4, 38), at(14, 28, 0)};
  const std::vector<double> lower_mile{8.0, 6.0, 3.25, 0.5};
  for (std::size_t row = 0; row < 4; ++row) {
    EXPECT_LE(std::chrono::abs(times.rows[row].arrive - arrive[row]), std::chrono::seconds{2}) << row;
    EXPECT_LE(std::chrono::abs(times.rows[row].leave - leave[row]), std::chrono::seconds{2}) << row;
    EXPECT_NEAR(in_river_miles(times.rows[row].passage.to), lower_mile[row], 1e-6) << row;
    EXPECT_EQ(times.rows[row].lunch > Duration{}, row == 1) << row;
    EXPECT_EQ(times.rows[row].portage > Duration{}, row == 0) << row;
  }
  EXPECT_LE(std::chrono::abs(times.end - at(14, 28, 0)), std::chrono::seconds{3});
  EXPECT_EQ(times.off_by, local(15, 0));  // half an hour of slack, up to the next ten minutes
}

// Twice the flow goes 2^0.34 times as fast (Leopold & Maddock 1953): 2.5 h become 1 h 58.5 min, as one row.
TEST(TimetableByHand, FollowsTheFlowOfTheHour) {
  HandMadeDay made;
  made.settings.stops_per_trip = made.settings.lunch = Duration{};
  made.flow = [](Instant) { return HandMadeDay::same(3600.0); };
  const Timetable times = timetable(made.day(), kUpper, kMiddle, local(8));
  ASSERT_EQ(times.rows.size(), 1u);
  EXPECT_NEAR(in_minutes(duration(times.end - times.launch)), 150.0 / std::pow(2.0, 0.34), 0.1);
}

// A dam's rise waits for nobody: at the middle access from 10:00 to 12:00. The boat is above it until 11:41.
TEST(TimetableByHand, MeetsADamsFrontWhereItIsThen) {
  HandMadeDay made = with_a_portage();
  Dam dam;
  dam.name = "Kettle Dam";
  dam.place = river_mile(20.0);
  made.river.dams = {dam};
  made.flow = [](Instant t) { return HandMadeDay::same(t < local(11) ? 1800.0 : 3600.0); };
  const Timetable times = timetable(made.day(), kUpper, kLower, local(7, 30));
  ASSERT_EQ(times.rows.size(), 4u);
  // What lies before 11:00 is as it was; rows begun later go 2^0.34 times as fast.
  EXPECT_LE(std::chrono::abs(times.rows[1].arrive - local(10, 10) - std::chrono::seconds{50}), std::chrono::seconds{2});
  EXPECT_NEAR(in_minutes(times.rows[2].afloat), 69.0 / std::pow(2.0, 0.34), 0.1);
  EXPECT_NEAR(in_minutes(times.rows[3].afloat), 69.0 / std::pow(2.0, 0.34), 0.1);
}

// T = mean + swing cos(2 pi (t - 17 h)/24 h) reaches the limit at 17 h - (24 h/2 pi) acos((limit - mean)/swing): the stop
// is half an hour before. Readings by the hour joined by straight lines and looked at every quarter of an hour come at most
// 20 min after the sine.
TEST(HeatStop, IsTheSinesOwnHourLessHalfAnHour) {
  for (const double mean_f : {63.0, 65.0, 67.0})
    for (const double swing_f : {6.0, 8.0, 10.0}) {
      if (mean_f + swing_f <= 70.5) continue;
      HandMadeDay made;
      made.settings.stops_per_trip = hours(4.0);
      made.water = [&](Instant t) {
        const double hour = in_hours(duration(t - local(0)));
        return HandMadeDay::warm(mean_f + swing_f * std::cos(2.0 * std::numbers::pi * (hour - 17.0) / 24.0));
      };
      const double reached = 17.0 - 12.0 / std::numbers::pi * std::acos((70.0 - mean_f) / swing_f);
      const Timetable times = timetable(made.day(), kUpper, kLower, local(9));
      if (local(0) + period(hours(reached)) > times.end) continue;
      const HeatOfTrip heat = heat_of(made.day(), times, heat_limits(made.river, made.settings));
      ASSERT_TRUE(heat.stop_by.has_value()) << mean_f << ' ' << swing_f;
      const double late_min = in_minutes(duration(*heat.stop_by - local(0))) - 60.0 * (reached - 0.5);
      EXPECT_GE(late_min, -0.1) << mean_f << ' ' << swing_f;
      EXPECT_LE(late_min, 20.0) << mean_f << ' ' << swing_f;
    }
}

// A launch by typed hour where no access has a position, so that no dawn puts it off.
HandMadeDay without_sun(std::chrono::year_month_day date, double launch_h) {
  HandMadeDay made;
  made.date = date;
  made.now = Instant{std::chrono::sys_days{date}} - std::chrono::hours{6};
  for (Access& access : made.river.accesses) access.at.reset();
  made.settings.launch = hours(launch_h);
  made.settings.stops_per_trip = made.settings.lunch = Duration{};
  return made;
}

// Clocks in Denver: 2:00 becomes 3:00 on 14 March 2027, 2:00 becomes 1:00 on 7 November 2027 (15 USC 260a, from memory).
TEST(ClockChange, OnTheWaterMovesTheWallClockAndNotTheRiver) {
  const struct {
    std::chrono::year_month_day date;
    double launch_h, off_h;
  } days[] = {{year{2027} / 3 / 14, 1.5, 5.0}, {year{2027} / 11 / 7, 0.5, 2.0}};
  for (const auto& [date, launch_h, off_h] : days) {
    HandMadeDay made = without_sun(date, launch_h);
    const Instant launch = launch_time(made.day(), sun_over(made.day(), kUpper));
    EXPECT_NEAR(in_hours(time_of_day(launch, made.river.time_zone)), launch_h, 1e-9);
    const Timetable times = timetable(made.day(), kUpper, kMiddle, launch);
    EXPECT_NEAR(in_hours(duration(times.end - times.launch)), 2.5, 1e-3);
    EXPECT_NEAR(in_hours(time_of_day(times.end, made.river.time_zone)), off_h, 1e-3);
  }
}

// The latest hour is read on the wall: the same float from 7:30 keeps to 12:10 on a day of 23, 24 or 25 h, and not to 12:00.
TEST(ClockChange, LeavesTheHoursOfTheSettingsOnTheWall) {
  for (const auto date : {year{2027} / 3 / 14, year{2027} / 5 / 14, year{2027} / 11 / 7}) {
    HandMadeDay made = without_sun(date, 7.5);
    made.settings.from = "upper";
    made.settings.to = "lower";  // 4.8 h: 12:18, with slack 12:50
    made.settings.latest_off = hours(12.0 + 50.0 / 60.0);
    EXPECT_FALSE(stretches(made.day()).at(0).broken.has_value());
    made.settings.latest_off = hours(12.0 + 40.0 / 60.0);
    ASSERT_TRUE(stretches(made.day()).at(0).broken.has_value());
    EXPECT_EQ(stretches(made.day()).at(0).broken->kind, LimitKind::OffTooLate);
  }
}

HandMadeDay in_the_far_north(std::chrono::year_month_day date) {
  HandMadeDay made;
  made.river.time_zone = "Europe/Oslo";
  made.date = date;
  made.now = Instant{std::chrono::sys_days{date}} - std::chrono::hours{6};
  for (Access& access : made.river.accesses) access.at = GeoPoint{70.0, 25.0};
  made.settings.from = "upper";
  made.settings.to = "lower";
  made.settings.latest_off = hours(23.0);
  made.settings.stops_per_trip = made.settings.lunch = Duration{};
  return made;
}

// 70 N, 25 E: on 21 June the sun stays up, and only the latest hour ends the day.
TEST(PolarDay, IsEndedByTheLatestHourAlone) {
  HandMadeDay made = in_the_far_north(year{2027} / 6 / 21);
  made.settings.launch = hours(17.0);  // 4.8 h: 21:48
  EXPECT_FALSE(stretches(made.day()).at(0).broken.has_value());
  made.settings.launch = hours(18.5);
  ASSERT_TRUE(stretches(made.day()).at(0).broken.has_value());
  EXPECT_EQ(stretches(made.day()).at(0).broken->kind, LimitKind::OffTooLate);
}

// On 21 December it does not come. Civil twilight (Meeus, as in sun.hpp): cos H = cos 96/(cos 70 cos -23.44) - tan 70
// tan -23.44, H 30.9 degrees or 2.06 h either side of noon, which is at 11:18. So no launch before 9:14, and nobody is out
// after 13:22.
TEST(PolarNight, HasTheHoursOfItsTwilight) {
  HandMadeDay made = in_the_far_north(year{2027} / 12 / 21);
  made.settings.launch = hours(6.0);
  const Stretch whole = stretches(made.day()).at(0);
  EXPECT_NEAR(in_hours(time_of_day(whole.times.launch, made.river.time_zone)), 9.2, 0.2);
  ASSERT_TRUE(whole.broken.has_value());  // 4.8 h from first light
  EXPECT_EQ(whole.broken->kind, LimitKind::AfterDark);
  EXPECT_EQ(whole.broken->where, "dusk");
  EXPECT_NEAR(in_hours(time_of_day(*whole.broken->at_limit, made.river.time_zone)), 13.4, 0.2);
  made.settings.to = "middle";  // 2.5 h
  EXPECT_FALSE(stretches(made.day()).at(0).broken.has_value());
}

}  // namespace
}  // namespace floatwright
