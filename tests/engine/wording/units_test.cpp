// Roundings for people. Factors outside the project: 1 ft = 0.3048 m, 1 cfs = 0.028316846592 m3/s, 1 mile = 1609.344 m
// (NIST SP 811 Appendix B).
#include "engine/wording/units.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace floatwright {
namespace {

constexpr auto kUs = UnitSystem::Us;
constexpr auto kMetric = UnitSystem::Metric;

TEST(FlowWords, HaveThreeFiguresAndACommaInThousands) {
  EXPECT_EQ(say_flow(cubic_feet_per_second(1847), kUs), "1,850 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(12345), kUs), "12,300 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(123456), kUs), "123,000 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(1234567), kUs), "1,230,000 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(847.4), kUs), "847 cfs");
}

TEST(FlowWords, HaveTwoFiguresUnderAHundred) {
  EXPECT_EQ(say_flow(cubic_feet_per_second(94.3), kUs), "94 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(9.44), kUs), "9.4 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(0), kUs), "0 cfs");
}

TEST(FlowWords, RoundUpIntoTheNextPowerOfTen) {
  EXPECT_EQ(say_flow(cubic_feet_per_second(999.7), kUs), "1,000 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(9997), kUs), "10,000 cfs");
  EXPECT_EQ(say_flow(cubic_feet_per_second(99.6), kUs), "100 cfs");
}

TEST(FlowWords, AreCubicMetresForMetricPeople) {
  EXPECT_EQ(say_flow(cubic_feet_per_second(1850), kMetric), "52.4 m3/s");  // 1850 x 0.0283168 = 52.39
  EXPECT_EQ(say_flow(cubic_metres_per_second(8.24), kMetric), "8.2 m3/s");
}

TEST(FlowWords, PutTheBandInBracketsUnlessItIsNone) {
  const Band<Discharge> band{cubic_feet_per_second(1700), cubic_feet_per_second(1850), cubic_feet_per_second(2050)};
  EXPECT_EQ(say_flow(band, kUs), "1,850 cfs (1,700-2,050)");
  EXPECT_EQ(say_flow(Band<Discharge>{band.best, band.best, band.best}, kUs), "1,850 cfs");
}

TEST(FlowWords, HaveTwoFiguresWhereSomethingChanges) {
  EXPECT_EQ(say_rough_flow(cubic_feet_per_second(1483), kUs), "1,500 cfs");
  EXPECT_EQ(say_rough_flow(cubic_feet_per_second(2944), kUs), "2,900 cfs");
}

TEST(LengthWords, AreHalfFeet) {
  EXPECT_EQ(say_length(feet(2.4), kUs), "2 1/2 ft");
  EXPECT_EQ(say_length(feet(2.2), kUs), "2 ft");
  EXPECT_EQ(say_length(feet(0.6), kUs), "1/2 ft");
  EXPECT_EQ(say_length(feet(0.2), kUs), "0 ft");
  EXPECT_EQ(say_length(feet(12.5), kUs), "12 1/2 ft");
}

TEST(LengthWords, AreTenthsOfAMetreForMetricPeople) { EXPECT_EQ(say_length(feet(12.5), kMetric), "3.8 m"); }

TEST(LengthWords, JoinTwoDepthsUnlessTheyRoundAlike) {
  EXPECT_EQ(length_range_figure(feet(3), feet(4.5), kUs), "3-4 1/2");
  EXPECT_EQ(length_range_figure(feet(3), feet(3.1), kUs), "3");
}

TEST(SpeedWords, AreHalfFeetPerSecond) {
  EXPECT_EQ(speed_figure(feet_per_second(3.6), kUs), "3.5");
  EXPECT_EQ(say_speed(feet_per_second(3.6), kUs), "3 1/2 ft/s");
  EXPECT_EQ(say_speed(feet_per_second(3.6), kMetric), "1.1 m/s");
}

TEST(SinkRateWords, AreInchesOrCentimetresPerSecond) {
  EXPECT_EQ(say_sink_rate(inches_per_second(5), kUs), "5 in/s");
  EXPECT_EQ(say_sink_rate(inches_per_second(1.5), kUs), "1 1/2 in/s");
  EXPECT_EQ(say_sink_rate(inches_per_second(5), kMetric), "13 cm/s");
}

TEST(TemperatureWords, AreWholeDegreesFahrenheitOrHalfCelsius) {
  EXPECT_EQ(say_temperature(fahrenheit(46.6), kUs), "47 F");
  EXPECT_EQ(say_temperature(celsius(-0.2), kUs), "32 F");
  EXPECT_EQ(say_temperature(celsius(8.3), kMetric), "8.5 C");
  EXPECT_EQ(say_temperature(celsius(8.1), kMetric), "8 C");
  EXPECT_EQ(say_temperature(celsius(-0.1), kMetric), "0 C");
}

TEST(PlaceWords, CountAsTheFileCounts) {
  River river;
  EXPECT_EQ(say_place(river_mile(40.2), river, kUs), "mile 40.2");
  EXPECT_EQ(say_distance(miles(11.64), river, kUs), "11.6 mi");
  river.miles_from_source = true;
  EXPECT_EQ(say_place(river_mile(-12.3), river, kUs), "mile 12.3");
  river.kilometres = true;
  EXPECT_EQ(say_place(river_kilometre(-12.3), river, kUs), "km 12.3");
  EXPECT_EQ(say_distance(kilometres(18.7), river, kUs), "18.7 km");
}

TEST(PlaceWords, AreKilometresForMetricPeopleWhateverTheFileCounts) {
  const River river;
  EXPECT_EQ(say_place(river_mile(40.2), river, kMetric), "km 64.7");  // 40.2 x 1.609344 = 64.70
  EXPECT_EQ(say_distance(miles(11.64), river, kMetric), "18.7 km");   // 18.73
}

TEST(WadingWords, AreTheProductOfDepthAndSpeed) {
  EXPECT_EQ(say_depth_times_speed(DepthTimesSpeed::from_si(0.6), kUs), "6.5 ft2/s");  // 0.6 / 0.3048^2 = 6.458
  EXPECT_EQ(say_depth_times_speed(DepthTimesSpeed::from_si(0.6), kMetric), "0.60 m2/s");
}

TEST(DurationWords, AreTensOfMinutes) {
  EXPECT_EQ(say_duration(minutes(37)), "40 min");
  EXPECT_EQ(say_duration(minutes(2)), "10 min");
  EXPECT_EQ(say_duration(minutes(118)), "2 h");
  EXPECT_EQ(say_duration(hours(6.35)), "6 h 20 min");
}

TEST(AgeWords, GrowFromMinutesToDays) {
  EXPECT_EQ(say_age(minutes(35)), "35 min");
  EXPECT_EQ(say_age(hours(14)), "14 h");
  EXPECT_EQ(say_age(hours(72)), "3 days");
}

TEST(AnyWord, SaysSoWhenTheValueIsNoNumber) {
  const double none = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(say_flow(cubic_feet_per_second(none), kUs), "? cfs");
  EXPECT_EQ(say_length(feet(none), kUs), "? ft");
  EXPECT_EQ(say_length(feet(none), kMetric), "? m");
  EXPECT_EQ(say_temperature(celsius(none), kUs), "? F");
  EXPECT_EQ(say_temperature(celsius(none), kMetric), "? C");
  EXPECT_EQ(say_duration(minutes(none)), "?");
}

}  // namespace
}  // namespace floatwright
