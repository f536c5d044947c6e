#include "engine/water/described.hpp"

#include <gtest/gtest.h>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

Reach reach_from(double from_mile, double to_mile) {
  Reach reach;
  reach.from = river_mile(from_mile);
  reach.to = river_mile(to_mile);
  return reach;
}

double noted_cfs(const Reach& reach, double cfs) {
  const Water w = water(WaterType::Run, 1.0, 3.0, 2.0, cfs);
  return in_cubic_feet_per_second(water_in(lantern_river(), reach, w).notes[0].at_flow);
}

TEST(DescribedWater, IsNotedAtTheWholeFlowWhereTheRiverIsOne) {
  EXPECT_DOUBLE_EQ(noted_cfs(reach_from(37.4, 35.0), 2400), 2400);
}

TEST(DescribedWater, IsNotedAtItsShareInASideChannelAndBesideIt) {
  // 5 % at 800 cfs and 25 % at 4000: 15 % half way, at 2400.
  Reach branch = reach_from(38.6, 37.4);
  branch.side_channel = 0;
  EXPECT_NEAR(noted_cfs(branch, 2400), 0.15 * 2400, 1e-6);
  EXPECT_NEAR(noted_cfs(reach_from(38.0, 37.4), 2400), 0.85 * 2400, 1e-6);
  EXPECT_NEAR(noted_cfs(branch, 9000), 0.25 * 9000, 1e-6);
}

TEST(LikelyWater, IsAMarkedGuessOfTheTypeItsFroudeNumberSays) {
  // Froude number v/sqrt(g d): 0.5 m/s in 2 m is 0.11, 1 m/s in 1 m is 0.32, 1.5 m/s in 0.5 m is 0.68.
  const auto type = [](double depth, double speed) {
    const Discharge q = cubic_metres_per_second(20.0 * depth * speed);
    return likely_water(channel_through({q, metres(20.0), metres(depth), mean_metres_per_second(speed)}), q).type;
  };
  EXPECT_EQ(type(2.0, 0.5), WaterType::Pool);
  EXPECT_EQ(type(1.0, 1.0), WaterType::Run);
  EXPECT_EQ(type(0.5, 1.5), WaterType::Riffle);
}

TEST(LikelyWater, RunsDeeperThanTheChannelsMean) {
  const Discharge q = cubic_metres_per_second(20.0);
  const Water w = likely_water(channel_through({q, metres(20.0), metres(1.0), mean_metres_per_second(1.0)}), q);
  EXPECT_NEAR(w.notes[0].depth.si(), 1.4, 1e-9);
  EXPECT_EQ(w.notes[0].source, DepthSource::Guessed);
  EXPECT_DOUBLE_EQ(w.fishing_time, 1.0);
}

}  // namespace
}  // namespace floatwright
