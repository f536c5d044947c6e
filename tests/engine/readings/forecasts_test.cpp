#include "engine/readings/forecasts.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

constexpr Instant kNow{std::chrono::sys_days{std::chrono::year{2027} / 5 / 13} + std::chrono::hours{18}};
constexpr Period kHour = std::chrono::hours{1};

GaugeSeries issued(Variable variable, Instant when, std::vector<std::optional<double>> values) {
  GaugeSeries series;
  series.station = "nwps:lanm8";
  series.variable = variable;
  series.series_id = "f";
  series.issued = when;
  Instant t = when;
  for (const auto& si : values) series.readings.push_back({t += kHour, si, {}});
  return series;
}

TEST(OfficialForecast, IsTheNewestIssueThatWasOut) {
  const std::vector<GaugeSeries> all{issued(Variable::Flow, kNow - 12 * kHour, {40}),
                                     issued(Variable::Flow, kNow - 3 * kHour, {50, std::nullopt, 52}),
                                     issued(Variable::Flow, kNow + kHour, {60})};
  const auto forecast = official_forecast("nwps:lanm8", all, kNow);
  ASSERT_TRUE(forecast);
  EXPECT_EQ(forecast->issued, kNow - 3 * kHour);
  ASSERT_EQ(forecast->flow.size(), 2u) << "a missing value is no value";
  EXPECT_DOUBLE_EQ(forecast->flow.values[1].si(), 52.0);
}

TEST(OfficialForecast, IsNoneWhereOnlyReadingsAreKnown) {
  auto observed = issued(Variable::Flow, kNow - 3 * kHour, {50});
  observed.issued.reset();
  EXPECT_FALSE(official_forecast("nwps:lanm8", {observed}, kNow));
  EXPECT_FALSE(official_forecast("nwps:lanm8", {}, kNow));
}

TEST(Weather, HasRainAsADepthInTimeAndEachOfTheThreeByItself) {
  const auto found = weather("nwps:lanm8",
                             {issued(Variable::AirTemperature, kNow - 2 * kHour, {12, 15}),
                              issued(Variable::Rain, kNow - kHour, {3.6, -1})},
                             kNow);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->issued, kNow - kHour);
  EXPECT_DOUBLE_EQ(in_celsius(found->air.values[1]), 15.0);
  ASSERT_EQ(found->rain.size(), 1u) << "rain is never negative";
  EXPECT_DOUBLE_EQ(found->rain.values[0].si(), 1e-6);
  EXPECT_TRUE(found->wind.empty());
  EXPECT_FALSE(weather("nws:45.0000,-111.0000", {}, kNow));
}

Weather hourly(std::vector<double> rain_mm_h, std::vector<double> wind_m_s) {
  Weather out;
  Instant t = kNow;
  for (const double r : rain_mm_h) out.rain.times.push_back(t), out.rain.values.push_back(metres_per_second(r * 1e-3 / 3600)), t += kHour;
  t = kNow;
  for (const double w : wind_m_s) out.wind.times.push_back(t), out.wind.values.push_back(metres_per_second(w)), t += kHour;
  return out;
}

TEST(Weather, AddsUpRainOverTheHoursThatItSpeaksFor) {
  const Weather wet = hourly({1, 2, 3}, {});
  EXPECT_NEAR(in_millimetres(*rain_between(wet, kNow, kNow + 24 * kHour)), 6.0, 1e-9);
  EXPECT_NEAR(in_millimetres(*rain_between(wet, kNow + kHour / 2, kNow + 2 * kHour)), 2.5, 1e-9);
  EXPECT_FALSE(rain_between(wet, kNow + 4 * kHour, kNow + 9 * kHour)) << "no row speaks for these hours";
  EXPECT_NEAR(in_millimetres(*wettest_day(wet, kNow + kHour, kNow + 2 * kHour)), 5.0, 1e-9);
}

TEST(Weather, SaysWhenTheWindIsOverALimit) {
  const Weather windy = hourly({}, {3, 7, 5, 9, 9, 2});
  EXPECT_EQ(strongest_wind(windy, kNow, kNow + 6 * kHour)->at, kNow + 3 * kHour);
  const auto hours = hours_windier_than(windy, metres_per_second(6), kNow, kNow + 6 * kHour);
  EXPECT_EQ(hours->from, kNow + kHour);
  EXPECT_EQ(hours->to, kNow + 5 * kHour);
  EXPECT_FALSE(hours_windier_than(windy, metres_per_second(9), kNow, kNow + 6 * kHour));
  EXPECT_FALSE(strongest_wind(windy, kNow + 8 * kHour, kNow + 9 * kHour));
}

}  // namespace
}  // namespace floatwright
