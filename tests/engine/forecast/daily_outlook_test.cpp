#include "engine/forecast/daily_outlook.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/forecast/daily_change.hpp"
#include "engine/forecast/tune_daily_flow.hpp"
#include "recorded_days.hpp"
#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using std::chrono::days;

constexpr std::chrono::sys_days kToday = std::chrono::sys_days{std::chrono::year{2027} / 5 / 13};  // of kNow
const std::string kZone = "America/Denver";

// Daily means in m3/s, the last of yesterday.
GaugeRecord days_of(const std::vector<double>& means, std::chrono::sys_days newest = kToday - days{1}) {
  GaugeRecord record;
  record.gauge = "ferry";
  record.station = "usgs:00000001";
  for (std::size_t i = 0; i < means.size(); ++i) {
    record.daily_discharge.times.push_back(newest - days{static_cast<int>(means.size() - 1 - i)});
    record.daily_discharge.values.push_back(cubic_metres_per_second(means[i]));
  }
  return record;
}

GaugeOutlook outlook_of(const GaugeRecord& record, const TunedDailyFlow* tuned = nullptr) {
  OutlookInputs in{record, nullptr, false, false, kZone};
  in.tuned_daily = tuned;
  return gauge_outlook(in, grid_around(), kNow);
}

// Noon in Denver in May, as an instant.
Instant noon(std::chrono::sys_days date) { return date + std::chrono::hours{18}; }
PerCase<double> at(const GaugeOutlook& outlook, Instant t) {
  const std::size_t i = grid_around().index_before(t);
  return {outlook.flow->low[i].si(), outlook.flow->middle[i].si(), outlook.flow->high[i].si()};
}

TEST(DailyOutlook, AFallGoesOnAtHalfItsPace) {
  const GaugeOutlook outlook = outlook_of(days_of({100, 100, 90}));
  EXPECT_EQ(outlook.state, FlowState::Falling);
  EXPECT_EQ(outlook.method, FlowMethod::DailyMeans);
  EXPECT_EQ(outlook.why, "down 10 % from one day's mean to the next");
  EXPECT_NEAR(at(outlook, noon(kToday - days{1})).middle, 90.0, 1e-9);
  EXPECT_NEAR(at(outlook, noon(kToday)).middle, 90.0 * std::sqrt(0.9), 1e-9);  // 0.50 min(d, 0)
  EXPECT_NEAR(at(outlook, noon(kToday)).low / at(outlook, noon(kToday)).middle, 0.92, 1e-9);
  EXPECT_NEAR(at(outlook, noon(kToday)).high / at(outlook, noon(kToday)).middle, 1.13, 1e-9);
}

TEST(DailyOutlook, ThreeCasesAreOneUntilTheNewestMeansNoonAndOpenAfter) {
  const GaugeOutlook outlook = outlook_of(days_of({80, 100, 130}));
  EXPECT_EQ(outlook.state, FlowState::Rising);
  EXPECT_EQ(outlook.now_at, noon(kToday - days{1}));
  EXPECT_EQ(outlook.forecast_from, noon(kToday - days{1}) + std::chrono::hours{1});
  const auto before = at(outlook, noon(kToday - days{1})), today = at(outlook, noon(kToday)),
             tomorrow = at(outlook, noon(kToday + days{1}));
  EXPECT_DOUBLE_EQ(before.low, before.high);
  EXPECT_LT(tomorrow.low / tomorrow.middle, today.low / today.middle);
  EXPECT_GT(tomorrow.high / tomorrow.middle, today.high / today.middle);
  for (std::size_t i = 0; i < outlook.flow->low.size(); ++i) {
    EXPECT_LE(outlook.flow->low[i], outlook.flow->middle[i]);
    EXPECT_LE(outlook.flow->middle[i], outlook.flow->high[i]);
  }
}

TEST(DailyOutlook, ReadingsOfHoursComeBeforeMeansOfDays) {
  GaugeRecord record = record_of(96, [](int) { return 50.0; });
  record.daily_discharge = days_of({100, 100, 90}).daily_discharge;
  EXPECT_NE(outlook_of(record).method, FlowMethod::DailyMeans);
  record.discharge = {};
  EXPECT_EQ(outlook_of(record).method, FlowMethod::DailyMeans);
}

TEST(DailyOutlook, AMeanOfADayThatIsNotOverIsNotUsed) {
  GaugeRecord record = days_of({100, 100, 90, 500}, kToday);
  EXPECT_NEAR(outlook_of(record).now.value().si(), 90.0, 1e-9);
}

TEST(DailyOutlook, OldMeansSayNothing) {
  const GaugeOutlook outlook = outlook_of(days_of({100, 100, 90}, kToday - days{3}));
  EXPECT_FALSE(outlook.flow.has_value());
  EXPECT_NE(outlook.why.find("no "), std::string::npos);
}

TEST(DailyOutlook, WithoutTheDayBeforeItHoldsWithTheWidestBand) {
  const GaugeOutlook outlook = outlook_of(days_of({90}));
  EXPECT_EQ(outlook.state, FlowState::Unknown);
  EXPECT_NEAR(at(outlook, noon(kToday)).middle, 90.0, 1e-9);
  EXPECT_NEAR(at(outlook, noon(kToday)).high, 90.0 * 1.65, 1e-9);
}

TEST(DailyOutlook, AQuietRiverHasANarrowerStatedBandThanARestlessOne) {
  const LnBand quiet = default_daily_band(FlowState::Falling, 1, 0.02),
               usual = default_daily_band(FlowState::Falling, 1, 0.10),
               restless = default_daily_band(FlowState::Falling, 1, 0.30);
  EXPECT_LT(quiet.high, usual.high);
  EXPECT_LT(usual.high, restless.high);
  EXPECT_NEAR(usual.high, std::log(1.13), 1e-12);
  EXPECT_GE(quiet.high, 0.5 * usual.high - 1e-12);
}

// The newest mean stands at noon of yesterday, the forecast's first row is of now (noon too): 24 h on, e^-2 of what the
// mean was over it is left.
// After 40 quiet days at 20 the stated bands are half as wide in ln: 0.72 and 0.62 of the middle for a rise, 0.87 of
// what was before it for a fall over two days.
TEST(DailyOutlook, ARiseIsUndoneInTheLowCaseAndNoMore) {
  std::vector<double> means(40, 20.0);
  means.push_back(24.0);
  const auto outlook = outlook_of(days_of(means));
  EXPECT_EQ(outlook.state, FlowState::Rising);
  EXPECT_NEAR(at(outlook, noon(kToday)).low, 24.0 * std::sqrt(0.72), 1e-6);
  EXPECT_NEAR(at(outlook, noon(kToday + days{1})).low, 20.0 * std::sqrt(0.87), 1e-6);
}
TEST(DailyOutlook, JoinsAnAgencysForecast) {
  GaugeRecord record = days_of({60, 60, 60});
  record.official = OfficialForecast{"nws:FERRY", kNow, {}};
  for (int h = 0; h <= 48; h += 6) {
    record.official->flow.times.push_back(kNow + std::chrono::hours{h});
    record.official->flow.values.push_back(cubic_metres_per_second(90.3));
  }
  const GaugeOutlook outlook = outlook_of(record), own = outlook_of(days_of({60, 60, 60}));
  EXPECT_EQ(outlook.method, FlowMethod::Official);
  EXPECT_TRUE(outlook.only_daily_means);
  EXPECT_NE(outlook.source.find("nws:FERRY"), std::string::npos);
  EXPECT_NEAR(at(outlook, kNow).middle, 90.3 * std::pow(60.0 / 90.3, std::exp(-2.0)), 1e-9);
  EXPECT_NEAR(at(outlook, noon(kToday - days{1})).middle, 60.0, 1e-9);
  EXPECT_NEAR(at(outlook, kNow).high / at(outlook, kNow).middle, at(own, kNow).high / at(own, kNow).middle, 1e-9);
}

DailyTuning fitted_to_recorded_days(bool with_above) {
  auto records = recorded_days("new_river/va_new_river_daily_2017.csv");
  DailyTuningInputs in{.own = {"ferry", "usgs:00000001", records["03168000"]}};
  if (with_above) in.above.push_back({"mill", "usgs:00000002", records["03165500"]});
  return tune_daily_flow(in);
}

TEST(DailyOutlook, WhatWasFittedIsUsedAndNamed) {
  const DailyTuning tuning = fitted_to_recorded_days(false);
  ASSERT_TRUE(tuning.tuned.has_value());
  std::vector<double> late;
  for (int t = 40; t > 0; --t) late.push_back(20.0 + 5.0 * (t % 7 == 0));
  const GaugeRecord record = days_of(late);
  const GaugeOutlook plain = outlook_of(record), fitted = outlook_of(record, &*tuning.tuned);
  EXPECT_EQ(fitted.source, "its daily means from 2017-01-01 to 2017-12-31");
  EXPECT_NE(at(fitted, noon(kToday)).high, at(plain, noon(kToday)).high);
  EXPECT_TRUE(plain.source.empty());

  GaugeRecord elsewhere = record;
  elsewhere.station = "usgs:00000002";
  EXPECT_DOUBLE_EQ(at(outlook_of(elsewhere, &*tuning.tuned), noon(kToday)).high, at(plain, noon(kToday)).high);
}

TEST(DailyOutlook, AGaugeAboveThatIsSilentLeavesTheUntunedForecast) {
  const DailyTuning tuning = fitted_to_recorded_days(true);
  ASSERT_EQ(tuning.tuned->gauge_above, "mill");
  const GaugeRecord record = days_of({20, 22, 21}), above = days_of({3, 9, 6});
  EXPECT_TRUE(outlook_of(record, &*tuning.tuned).source.empty());
  OutlookInputs in{record, nullptr, false, false, kZone};
  in.tuned_daily = &*tuning.tuned;
  in.daily_above = &above.daily_discharge;
  const GaugeOutlook with_above = gauge_outlook(in, grid_around(), kNow);
  EXPECT_EQ(with_above.source, "its daily means from 2017-01-01 to 2017-12-31 and those of gauge mill");
}

}  // namespace
}  // namespace floatwright
