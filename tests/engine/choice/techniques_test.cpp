// How a line may be fished: common practice, no source.
#include "engine/choice/techniques.hpp"

#include <gmock/gmock.h>

#include "engine/choice/cast_time.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
constexpr double kExact = 1e-9;

std::size_t count(Method method, LineKind kind, Platform platform, double pace = 0.5) {
  return techniques(method, kind, platform, pace, kJudgement).size();
}

TEST(Techniques, SwingOnlyFromAFixedRod) {
  EXPECT_EQ(count(Method::Swing, LineKind::SinkingTip, Platform::Anchored), 3u);
  EXPECT_EQ(count(Method::Swing, LineKind::SinkingTip, Platform::Wading), 3u);
  EXPECT_EQ(count(Method::Swing, LineKind::SinkingTip, Platform::Drifting), 0u);
  EXPECT_EQ(count(Method::Swing, LineKind::SinkingTip, Platform::Held), 0u);
}

TEST(Techniques, SwingAFullSinkingLineTightOnly) {
  const auto found = techniques(Method::Swing, LineKind::FullSinking, Platform::Anchored, 0, kJudgement);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].mending, Mending::Tight);
}

TEST(Techniques, StripAtFourCountsAndTwoSpeedsUnlessTheBoatOutrunsTheWater) {
  EXPECT_EQ(count(Method::Strip, LineKind::SinkingTip, Platform::Drifting, 1.3), 8u);
  EXPECT_EQ(count(Method::Strip, LineKind::SinkingTip, Platform::Drifting, 1.31), 0u);
  EXPECT_EQ(count(Method::Strip, LineKind::LoopedHead, Platform::Anchored), 0u);
}

TEST(Techniques, LeadALineFromAnyBoatThatDoesNotDrift) {
  EXPECT_EQ(count(Method::TightLine, LineKind::ThinNymphLine, Platform::Drifting), 0u);
  EXPECT_EQ(count(Method::TightLine, LineKind::ThinNymphLine, Platform::Held), 1u);
  EXPECT_EQ(count(Method::Dry, LineKind::DoubleTaper, Platform::Drifting), 1u);
  EXPECT_EQ(count(Method::Indicator, LineKind::NymphTaper, Platform::Anchored), 1u);
}

TEST(Techniques, CarryTheirMethodAndPlatform) {
  for (const Method method : {Method::Swing, Method::Strip, Method::Indicator, Method::TightLine, Method::Dry}) {
    for (const Technique& one : techniques(method, LineKind::Floating, Platform::Wading, 0, kJudgement)) {
      EXPECT_EQ(one.method, method);
      EXPECT_EQ(one.platform, Platform::Wading);
    }
  }
}

TEST(BoatSpeed, IsWhatTheHoldLeavesOfTheBoatsLaneAndAtMostTwiceTheWater) {
  const auto speed = [](Platform platform, double lane, double water) {
    return in_metres_per_second(
        boat_speed(platform, surface_metres_per_second(lane), surface_metres_per_second(water), kJudgement));
  };
  EXPECT_NEAR(speed(Platform::Drifting, 1.2, 1.0), 1.2, kExact);
  EXPECT_NEAR(speed(Platform::Held, 1.2, 1.0), 0.78, kExact);
  EXPECT_NEAR(speed(Platform::Anchored, 1.2, 1.0), 0.0, kExact);
  EXPECT_NEAR(speed(Platform::Wading, 1.2, 1.0), 0.0, kExact);
  EXPECT_NEAR(speed(Platform::Drifting, 1.2, 0.3), 0.6, kExact);
}

TEST(CastLength, OfAThinLineIsNineMetresAtMost) {
  EXPECT_EQ(in_metres(cast_length(LineKind::MonoRig, metres(12), kJudgement.techniques)), 9.0);
  EXPECT_EQ(in_metres(cast_length(LineKind::ThinNymphLine, metres(7), kJudgement.techniques)), 7.0);
  EXPECT_EQ(in_metres(cast_length(LineKind::SinkingTip, metres(12), kJudgement.techniques)), 12.0);
}

double cast_s(LineKind kind, Technique technique, double rate_in_s = 0, double cast_m = 12) {
  SinkingPart part;
  part.sink_rate = inches_per_second(rate_in_s);
  return in_seconds(cast_time(kind, part, technique, metres(cast_m), kJudgement.times));
}

Technique of(Method method, Mending mending = Mending::Tight, double count_s = 0) {
  Technique technique;
  technique.method = method;
  technique.mending = mending;
  technique.count = seconds(count_s);
  return technique;
}

TEST(CastTime, IsSixSecondsAndTheMends) {
  EXPECT_NEAR(cast_s(LineKind::Floating, of(Method::Swing)), 6, kExact);
  EXPECT_NEAR(cast_s(LineKind::Floating, of(Method::Swing, Mending::OneMend)), 7, kExact);
  EXPECT_NEAR(cast_s(LineKind::Floating, of(Method::Swing, Mending::MendAndFeed)), 9, kExact);
}

TEST(CastTime, IsLongerForAFastSinkingPartFromFiveInchesASecond) {
  EXPECT_NEAR(cast_s(LineKind::SinkingTip, of(Method::Swing), 4.9), 6, kExact);
  EXPECT_NEAR(cast_s(LineKind::SinkingTip, of(Method::Swing), 5.0), 8, kExact);
}

TEST(CastTime, GathersAFullSinkingLineAndAShootingHeadBeforeAnotherSwing) {
  EXPECT_NEAR(cast_s(LineKind::FullSinking, of(Method::Swing), 3, 12), 13, kExact);
  EXPECT_NEAR(cast_s(LineKind::FullSinking, of(Method::Swing), 3, 4), 6, kExact);
  EXPECT_NEAR(cast_s(LineKind::ShootingHead, of(Method::Swing)), 9, kExact);
  EXPECT_NEAR(cast_s(LineKind::FullSinking, of(Method::Strip), 3, 12), 6, kExact);
}

TEST(CastTime, PaysTheCountOfAStrip) {
  EXPECT_NEAR(cast_s(LineKind::FullSinking, of(Method::Strip, Mending::Tight, 10), 3), 16, kExact);
}

TEST(CastTime, CostsASecondForATaperNotMadeForTheMethod) {
  EXPECT_NEAR(cast_s(LineKind::NymphTaper, of(Method::Indicator)), 7, kExact);
  EXPECT_NEAR(cast_s(LineKind::Floating, of(Method::Indicator)), 8, kExact);
  EXPECT_NEAR(cast_s(LineKind::DoubleTaper, of(Method::Dry)), 7, kExact);
  EXPECT_NEAR(cast_s(LineKind::NymphTaper, of(Method::Dry)), 8, kExact);
}

TEST(CastTime, OfALedLineIsThreeSecondsInAll) {
  EXPECT_NEAR(cast_s(LineKind::Floating, of(Method::TightLine)), 3, kExact);
}

}  // namespace
}  // namespace floatwright
