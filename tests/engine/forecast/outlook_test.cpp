// Methods and default bands as stated in docs/equations.md (judgement); the expected numbers are worked out by hand
// beside.
#include "engine/forecast/outlook.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
constexpr double kRoundOff = 1e-9;  // m3/s

GaugeOutlook outlook_of(const GaugeRecord& record, Instant now = kNow) {
  return gauge_outlook({record, nullptr, false, false, "America/Denver"}, grid_around(now), now);
}
double at_lead(const std::vector<Discharge>& flow, int lead_h) {
  return flow[static_cast<std::size_t>(96 + lead_h)].si();
}

TEST(Outlook, HoldsASteadyRiverBetweenTheStatedBands) {
  const auto outlook = outlook_of(record_of(100, [](int) { return 40.0; }));
  EXPECT_EQ(outlook.method, FlowMethod::Hold);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 40.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->low, 24), 40.0 * 0.82, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 12), 40.0 * 1.15, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 18), 40.0 * std::sqrt(1.15 * 1.30), kRoundOff);  // half way in logs
  EXPECT_NEAR(at_lead(outlook.flow->low, 3), 40.0 * std::sqrt(0.94), kRoundOff);           // none at lead 0
}
TEST(Outlook, InventsNoRise) {
  const auto outlook = outlook_of(record_of(100, [](int h) { return h >= 12 ? 40.0 : 40.0 + 2.0 * (12 - h); }));
  EXPECT_EQ(outlook.state, FlowState::Rising);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 64.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, 6), 64.0 * 1.45, kRoundOff);
}
TEST(Outlook, LetsAFallFade) {
  const auto outlook = outlook_of(record_of(100, [](int h) { return 40.0 * std::exp(0.01 * h); }));  // 6 % in 6 h
  EXPECT_EQ(outlook.method, FlowMethod::FadingFall);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 6), 40.0 * std::exp(-0.06 * 0.40), 1e-3);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 40.0 * std::exp(-0.06 * 0.85), 1e-3);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 36), 40.0 * std::exp(-0.06), 1e-3);
}
TEST(Outlook, CarriesNoMoreThanHalfOfALogFromACollapse) {
  const auto outlook = outlook_of(record_of(100, [](int h) { return 40.0 * std::exp(0.2 * std::min(h, 20)); }));
  EXPECT_NEAR(at_lead(outlook.flow->middle, 36), 40.0 * std::exp(-0.5), 1e-6);
}
TEST(Outlook, RepeatsTheShapeOfTheDailyWaveWithoutItsTrend) {
  const auto wave = [](int h) { return 50.0 * std::exp(0.05 * std::sin(2 * std::numbers::pi * h / 24.0) + 0.001 * h); };
  const auto outlook = outlook_of(record_of(100, wave));
  EXPECT_EQ(outlook.method, FlowMethod::WaveShape);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 24), 50.0, kRoundOff);              // at 24 h the newest value
  EXPECT_NEAR(at_lead(outlook.flow->middle, 6), 50.0 * std::exp(-0.05), 1e-6);  // trough of the sine, no trend
  EXPECT_NEAR(at_lead(outlook.flow->middle, 30), at_lead(outlook.flow->middle, 6), 1e-9);
  EXPECT_NEAR(at_lead(outlook.flow->low, 24), 50.0 * 0.80, kRoundOff);
}
TEST(Outlook, IsTheRecordInThePastInAllThreeCases) {
  const auto outlook = outlook_of(record_of(100, [](int h) { return 40.0 + h; }));
  EXPECT_NEAR(at_lead(outlook.flow->low, -10), 50.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->high, -10), 50.0, kRoundOff);
  EXPECT_EQ(outlook.forecast_from, kNow + std::chrono::hours{1});
}
TEST(Outlook, SaysNothingUnderIce) {
  auto record = record_of(100, [](int) { return 40.0; });
  record.ice_now = true;
  const auto outlook = outlook_of(record);
  EXPECT_EQ(outlook.state, FlowState::Ice);
  ASSERT_FALSE(outlook.flow.has_value());
  EXPECT_THAT(outlook.flow.why_absent(), HasSubstr("ice"));
  EXPECT_FALSE(outlook.now.has_value());
}
TEST(Outlook, SaysNothingOfAnEmptyRecordOrADryOne) {
  EXPECT_FALSE(outlook_of(GaugeRecord{}).flow.has_value());
  EXPECT_FALSE(outlook_of(record_of(100, [](int) { return 0.0; })).flow.has_value());
  EXPECT_FALSE(outlook_of(record_of(100, [](int h) { return h == 0 ? -3.0 : 40.0; })).flow.has_value());
}
TEST(Outlook, GoesOnFromARecordThatEndedInTheMorningAndSaysSo) {
  const Instant newest = kNow - std::chrono::hours{10};
  const auto outlook = outlook_of(record_of(
      100, [](int) { return 40.0; }, newest));
  ASSERT_TRUE(outlook.flow.has_value());
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("no flow was read since 02:00 on Thu 13 May")));
  EXPECT_EQ(outlook.forecast_from, newest + std::chrono::hours{1});
  EXPECT_NEAR(at_lead(outlook.flow->low, 14), 40.0 * 0.82, kRoundOff);  // the lead counts from the newest reading: 24 h
}
TEST(Outlook, SaysNothingWhereTheRecordEndedMoreThanTwoDaysAgo) {
  const auto outlook = outlook_of(record_of(
      100, [](int) { return 40.0; }, kNow - std::chrono::hours{49}));
  ASSERT_FALSE(outlook.flow.has_value());
  EXPECT_THAT(outlook.flow.why_absent(), HasSubstr("no reading since 11:00 on Tue 11 May"));
}
TEST(Outlook, ReadsNothingLaterThanNow) {
  auto with_future = record_of(
      110, [](int h) { return h < 10 ? 400.0 : 40.0; }, kNow + std::chrono::hours{10});
  const auto outlook = outlook_of(with_future);
  EXPECT_NEAR(outlook.now->si(), 40.0, kRoundOff);
  EXPECT_NEAR(at_lead(outlook.flow->middle, 6), 40.0, kRoundOff);
}
TEST(Outlook, BridgesAWideGapAndSaysSo) {
  auto record = record_of(100, [](int h) { return 40.0 + 0.1 * h; });
  record.discharge.times.erase(record.discharge.times.begin() + 40, record.discharge.times.begin() + 60);
  record.discharge.values.erase(record.discharge.values.begin() + 40, record.discharge.values.begin() + 60);
  const auto outlook = outlook_of(record);
  EXPECT_THAT(outlook.notes, Contains(HasSubstr("filled in")));
  EXPECT_THAT(outlook.why, HasSubstr("a gap in the last 72 h"));
  EXPECT_NEAR(at_lead(outlook.flow->middle, -50), 45.0, 0.05);  // 0.1 % between a line in ln and one in Q
}

}  // namespace
}  // namespace floatwright
