#include "engine/sinking/still_water.hpp"

#include <gtest/gtest.h>

#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

const StillWater kLake{feet(20.0), celsius(10.0)};
const std::vector<Duration> kCounts{seconds(5.0), seconds(20.0), seconds(40.0)};

std::vector<StillCount> rows(std::size_t line, std::size_t fly, const StillWater& lake = kLake) {
  const auto found =
      still_counts(rack::tackle(), {line, {}, fly, {}}, lake, kCounts, metres_per_second(0.3), metres(12), feet(9));
  EXPECT_TRUE(found) << (found ? "" : found.why_absent());
  return found ? *found : std::vector<StillCount>{};
}

// Common practice, no source: a line of 3 in/s counted 20 s is about 5 ft down; nine tenths of its rate are reckoned.
TEST(StillWater, CountsALineDownAtNineTenthsOfItsRate) {
  const SinkingPart line{feet(90.0), inches_per_second(3.0), inches_per_second(3.0), inches_per_second(3.0), true};
  EXPECT_NEAR(in_feet(counted_depth(line, seconds(20.0))), 4.5, 1e-9);
  EXPECT_NEAR(count_to(line, feet(4.5))->si(), 20.0, 1e-9);
}

TEST(StillWater, HangsATipNoDeeperThanItIsLong) {
  const SinkingPart tip{feet(12.5), inches_per_second(5.0), inches_per_second(5.0), inches_per_second(5.0), false};
  EXPECT_NEAR(in_feet(counted_depth(tip, seconds(100.0))), 12.5, 1e-9);
  EXPECT_FALSE(count_to(tip, feet(13.0)));
}

TEST(StillWater, SaysThatAFloatingLineIsNotCounted) {
  EXPECT_FALSE(count_to(SinkingPart{}, feet(3.0)));
  EXPECT_FALSE(still_counts(rack::tackle(), {rack::kFloating, {}, rack::kPlain, {}}, kLake, kCounts,
                            metres_per_second(0.3), metres(12), feet(9)));
}

TEST(StillWater, StartsDeeperForALongerCount) {
  const auto found = rows(rack::kFull, rack::kPlain);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_LT(found[0].at_first, found[1].at_first);
  EXPECT_LT(found[1].at_first, found[2].at_first);
}

TEST(StillWater, StopsAtTheBed) {
  const auto found = rows(rack::kFull, rack::kPlain, {feet(3.0), celsius(10.0)});
  ASSERT_EQ(found.size(), 3U);
  EXPECT_TRUE(found[2].to_the_bed);
  for (const StillCount& row : found) EXPECT_LE(row.at_first, feet(3.0));
}

}  // namespace
}  // namespace floatwright
