#include "engine/trip/stretches.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

std::optional<BrokenLimit> limit_of(HandMadeDay& made, const std::string& from, const std::string& to) {
  made.settings.from = from;
  made.settings.to = to;
  const auto found = stretches(made.day());
  EXPECT_EQ(found.size(), 1u);
  return found.empty() ? std::nullopt : found.front().broken;
}

TEST(Stretches, AreEveryPairOfAccessesDownstreamOfEachOther) {
  HandMadeDay made;
  const auto found = stretches(made.day());
  EXPECT_EQ(found.size(), 3u);
  for (const Stretch& stretch : found) {
    EXPECT_GT(made.river.accesses[stretch.put_in].place, made.river.accesses[stretch.take_out].place);
    EXPECT_FALSE(stretch.broken.has_value());
  }
}

TEST(Stretches, OutOfTheLengthsAskedForAreRuledOut) {
  HandMadeDay made;
  made.settings.least_stretch = miles(5.6);
  made.settings.most_stretch = miles(10.0);
  EXPECT_EQ(limit_of(made, "middle", "lower")->kind, LimitKind::TooShort);
  EXPECT_EQ(limit_of(made, "upper", "lower")->kind, LimitKind::TooLong);
  EXPECT_FALSE(limit_of(made, "upper", "middle").has_value());
}

TEST(Stretches, WithAClosedAccessAreRuledOut) {
  HandMadeDay made;
  made.river.accesses[1].closed = true;
  EXPECT_EQ(limit_of(made, "upper", "middle")->kind, LimitKind::AccessClosed);
  EXPECT_FALSE(limit_of(made, "upper", "lower").has_value());
}

TEST(BoatLimits, AreHeldAgainstTheLowCaseBelow) {
  HandMadeDay made;
  made.river.boat_limits.least_flow = cubic_feet_per_second(900.0);
  made.flow = [](Instant) { return HandMadeDay::spread(880.0, 1000.0, 1200.0); };
  const auto broken = limit_of(made, "upper", "middle");
  ASSERT_TRUE(broken.has_value());
  EXPECT_EQ(broken->kind, LimitKind::FlowBelowBoat);
  EXPECT_NEAR(in_cubic_feet_per_second(*broken->flow), 880.0, 0.01);
}

TEST(BoatLimits, AreHeldAgainstTheHighCaseAbove) {
  HandMadeDay made;
  made.river.boat_limits.most_flow = cubic_feet_per_second(4000.0);
  made.flow = [](Instant) { return HandMadeDay::spread(2500.0, 3000.0, 4100.0); };
  EXPECT_EQ(limit_of(made, "upper", "middle")->kind, LimitKind::FlowAboveBoat);
}

TEST(BoatLimits, CountOnlyWhileTheBoatIsThere) {
  HandMadeDay made;
  made.river.boat_limits.most_flow = cubic_feet_per_second(4000.0);
  made.flow = [](Instant t) { return HandMadeDay::same(t > local(18) ? 5000.0 : 1800.0); };
  EXPECT_FALSE(limit_of(made, "upper", "middle").has_value());
}

TEST(Hazards, TooThinForTheBoatRuleAStretchOut) {
  HandMadeDay made;
  Hazard shelf;
  shelf.what = "Gravel shelf";
  shelf.place = river_mile(8.0);
  shelf.least_flow = cubic_feet_per_second(2000.0);
  made.river.hazards = {shelf};
  const auto broken = limit_of(made, "upper", "middle");
  ASSERT_TRUE(broken.has_value());
  EXPECT_EQ(broken->kind, LimitKind::HazardFlow);
  EXPECT_EQ(broken->where, "Gravel shelf");
  EXPECT_FALSE(limit_of(made, "middle", "lower").has_value());
}

TEST(Stretches, ClosedAllAlongAreRuledOutInTheClosuresWords) {
  HandMadeDay made;
  Closure closure;
  closure.from = river_mile(13.0);
  closure.to = river_mile(6.0);
  closure.first_day = std::chrono::year{2027} / 5 / 1;
  closure.last_day = std::chrono::year{2027} / 5 / 14;  // the day itself: both ends count
  closure.why = "nesting";
  made.river.closures = {closure};
  const auto broken = limit_of(made, "upper", "middle");
  ASSERT_TRUE(broken.has_value());
  EXPECT_EQ(broken->kind, LimitKind::ClosedWater);
  EXPECT_NE(say_limit(*broken).find("nesting"), std::string::npos);
  made.river.closures[0].last_day = std::chrono::year{2027} / 5 / 13;
  EXPECT_FALSE(limit_of(made, "upper", "middle").has_value());
}

TEST(Stretches, ThatEndAfterTheLatestHourAreRuledOut) {
  HandMadeDay made;
  made.settings.latest_off = hours(13.0);
  EXPECT_EQ(limit_of(made, "upper", "lower")->kind, LimitKind::OffTooLate);
  EXPECT_FALSE(limit_of(made, "upper", "middle").has_value());
}

TEST(Stretches, ThatEndAfterSunsetAreRuledOut) {
  HandMadeDay made;
  made.settings.earliest_launch = hours(18.0);
  made.settings.latest_off = hours(26.0);  // two in the morning
  EXPECT_EQ(limit_of(made, "upper", "lower")->kind, LimitKind::AfterDark);
}

}  // namespace
}  // namespace floatwright
