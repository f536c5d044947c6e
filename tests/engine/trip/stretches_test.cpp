#include "engine/trip/stretches.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

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

// Thirty accesses a mile apart, or thereabouts: 435 stretches.
HandMadeDay long_river(std::mt19937& random) {
  std::uniform_real_distribution<double> apart(0.6, 1.6), pace(0.3, 0.6);
  std::bernoulli_distribution seldom(0.1);
  HandMadeDay made;
  made.river.accesses.clear();
  made.river.notes.clear();
  double mile = 0.5;
  for (int i = 0; i < 30; ++i, mile += apart(random)) {
    made.river.accesses.insert(made.river.accesses.begin(), access("a" + std::to_string(i), mile, 0.01 * i));
    made.river.accesses.front().closed = seldom(random);
  }
  for (std::size_t i = 0; i + 1 < made.river.accesses.size(); ++i) {
    const Access &from = made.river.accesses[i], &to = made.river.accesses[i + 1];
    made.river.notes.push_back(note_between(from, to, pace(random) * in_miles(from.place - to.place)));
  }
  // A dam's water comes down in the forenoon, so that what is reached later goes faster.
  made.flow = [](Instant t) { return HandMadeDay::same(t < local(10) ? 900.0 : 3600.0); };
  return made;
}

bool is_too_far(LimitKind kind) {
  return kind == LimitKind::TooLong || kind == LimitKind::OffTooLate || kind == LimitKind::AfterDark;
}

// What is left out of many is found by asking for each alone: it breaks a limit that a shorter one from the same access
// breaks too. What is told is told as it is alone.
TEST(Stretches, OfManyAccessesAreAllThatCouldBeFloated) {
  std::mt19937 random(250);
  std::size_t told = 0, left_out = 0;
  for (int river = 0; river < 4; ++river) {
    HandMadeDay made = long_river(random);
    made.settings.latest_off = hours(river % 2 == 0 ? 13.0 : 16.0);
    if (river == 3) made.settings.most_stretch = miles(9.0);
    const RiverDay& day = made.day();
    const std::vector<Stretch> together = stretches(day);
    Settings one_alone = made.settings;
    const RiverDay alone{day.river, day.graph, one_alone, day.tackle, day.judgement, day.records, day.flows,
                         day.temperatures, day.day, day.now, day.tables, day.weather};
    std::size_t found_again = 0;
    for (const Access& from : made.river.accesses)
      for (const Access& to : made.river.accesses) {
        one_alone.from = from.id;
        one_alone.to = to.id;
        const std::vector<Stretch> asked = stretches(alone);
        if (asked.empty()) continue;
        const auto same = std::ranges::find_if(together, [&](const Stretch& s) {
          return s.put_in == asked[0].put_in && s.take_out == asked[0].take_out;
        });
        if (same != together.end()) {
          ++found_again;
          EXPECT_EQ(same->times.off_by, asked[0].times.off_by);
          EXPECT_EQ(same->broken.has_value(), asked[0].broken.has_value());
          continue;
        }
        ++left_out;
        ASSERT_TRUE(asked[0].broken.has_value()) << from.id << " to " << to.id;
        const bool at_an_end = from.closed || to.closed;
        EXPECT_TRUE(at_an_end || is_too_far(asked[0].broken->kind)) << from.id << " to " << to.id;
      }
    EXPECT_EQ(found_again, together.size());
    told += found_again;
  }
  EXPECT_GT(left_out, 200u);
  EXPECT_GT(told, 400u);
}

}  // namespace
}  // namespace floatwright
