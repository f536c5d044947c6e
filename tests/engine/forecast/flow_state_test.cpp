// The states are told apart by thresholds that are judgement; the records here are made so that each is met or missed.
#include "engine/forecast/flow_state.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using ::testing::HasSubstr;

NamedState state_of(const GaugeRecord& record, bool dam = false, bool snow = false) {
  return name_state(flow_history(record.discharge, kNow), dam, snow);
}
double wave(int hours_back, double half_span) {
  return 50.0 * std::exp(half_span * std::sin(2 * std::numbers::pi * hours_back / 24.0));
}

TEST(FlowState, IsSteadyWhereNothingMoves) {
  EXPECT_EQ(state_of(record_of(100, [](int) { return 40.0; })).state, FlowState::Steady);
}
TEST(FlowState, IsRisingPastTwoPercentInSixHours) {
  const auto named =
      state_of(record_of(100, [](int h) { return h >= 6 ? 40.0 : 40.0 * (1.0 + 0.04 * (6 - h) / 6.0); }));
  EXPECT_EQ(named.state, FlowState::Rising);
  EXPECT_THAT(named.why, HasSubstr("up 4 % in 6 h"));
}
TEST(FlowState, IsFallingPastHalfAPercentInSixHours) {
  EXPECT_EQ(state_of(record_of(100, [](int h) { return 40.0 * std::exp(0.0015 * h) + 0.00123; })).state,
            FlowState::Falling);
}
TEST(FlowState, TakesAChangeUnderTwiceTheRoundingAsNone) {
  EXPECT_EQ(state_of(record_of(100, [](int h) { return h == 0 ? 119.0 : 120.0; })).state, FlowState::Steady);
}
TEST(FlowState, NamesADailyWaveWhereThreeDaysAreAlike) {
  const auto named = state_of(record_of(100, [](int h) { return wave(h, 0.03); }), false, true);
  EXPECT_EQ(named.state, FlowState::DailyWave);
  EXPECT_THAT(named.why, HasSubstr("daily snowmelt wave of 6 % on each of the last three days"));
}
TEST(FlowState, SaysSnowmeltOnlyWhereTheRiverIsSnowFed) {
  EXPECT_THAT(state_of(record_of(100, [](int h) { return wave(h, 0.03); })).why, ::testing::Not(HasSubstr("snow")));
}
TEST(FlowState, NamesNoWaveOfUnderThreePercent) {
  EXPECT_NE(state_of(record_of(100, [](int h) { return wave(h, 0.014); })).state, FlowState::DailyWave);
}
TEST(FlowState, NamesNoWaveWhereNeighbouringDaysAreOpposed) {
  const auto flipping = [](int h) { return wave(h, (h / 24) % 2 == 0 ? 0.04 : -0.04); };
  EXPECT_NE(state_of(record_of(100, flipping)).state, FlowState::DailyWave);
}
TEST(FlowState, FindsTheWaveOnASteepFall) {
  EXPECT_EQ(state_of(record_of(100, [](int h) { return wave(h, 0.04) * std::exp(0.004 * h); })).state,
            FlowState::DailyWave);
}
TEST(FlowState, AsksForADamBeforeAWaveSinceReleasesLookLikeOne) {
  EXPECT_EQ(state_of(record_of(100, [](int h) { return wave(h, 0.1); }), true).state, FlowState::Regulated);
}
TEST(FlowState, SaysThatAShortRecordCannotShowAWave) {
  const auto named = state_of(record_of(60, [](int h) { return wave(h, 0.05); }));
  EXPECT_NE(named.state, FlowState::DailyWave);
  EXPECT_THAT(named.why, HasSubstr("less than 72 h of record"));
}
TEST(FlowState, KeepsAWaveInMindForTenDays) {
  const auto ended = [](int days) {
    return flow_history(record_of(24 * 16, [days](int h) { return h < 24 * days ? 50.0 : wave(h, 0.05); }).discharge,
                        kNow);
  };
  EXPECT_TRUE(wave_lately(ended(6)));
  EXPECT_FALSE(wave_lately(ended(12)));
}

}  // namespace
}  // namespace floatwright
