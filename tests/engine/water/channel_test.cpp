#include "engine/water/channel.hpp"

#include <gtest/gtest.h>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

const ChannelMeasurement kMeasured{cubic_feet_per_second(1800), feet(150), feet(3.4), mean_feet_per_second(3.5)};
const Discharge kUsual = cubic_feet_per_second(1800);

double carried(const Channel& channel, Discharge q) {
  return width(channel, q).si() * mean_depth(channel, q).si() * mean_speed(channel, q).si();  // m3/s
}

Reach described_by(std::optional<std::size_t> named_reach, std::optional<std::size_t> a_note) {
  Reach reach;
  reach.from = river_mile(34.0);
  reach.to = river_mile(33.0);
  reach.named_reach = named_reach;
  reach.note = a_note;
  return reach;
}

TEST(Channel, CarriesTheFlowAtEveryFlow) {
  const Channel channel = channel_through(kMeasured);
  for (const double cfs : {300.0, 1800.0, 9000.0}) {
    const Discharge q = cubic_feet_per_second(cfs);
    EXPECT_NEAR(carried(channel, q) / q.si(), 1.0, 1e-12) << cfs;
  }
}

TEST(Channel, HasExponentsThatAddUpToOne) {
  const Channel channel = channel_through(kMeasured);
  EXPECT_DOUBLE_EQ(channel.b + channel.f + channel.m, 1.0);
  EXPECT_DOUBLE_EQ(channel.a * channel.c * channel.k, 1.0);
}

TEST(Channel, SharesAMismatchAlikeBetweenWidthDepthAndSpeed) {
  // 150 x 3.4 x 3.5 = 1785 cfs measured at 1800: each grows by the cube root of 1800/1785, 0.28 %.
  const Channel channel = channel_through(kMeasured);
  EXPECT_NEAR(in_feet(width(channel, kUsual)), 150.0 * 1.002794, 1e-3);
  EXPECT_NEAR(in_feet(mean_depth(channel, kUsual)), 3.4 * 1.002794, 1e-4);
  EXPECT_NEAR(in_feet_per_second(mean_speed(channel, kUsual)), 3.5 * 1.002794, 1e-4);
}

TEST(Channel, PassesAWaveFasterThanItsWater) {
  const Channel channel = channel_through(kMeasured);
  EXPECT_NEAR(celerity(channel, kUsual).si() / mean_speed(channel, kUsual).si(), 1.0 / 0.66, 1e-12);
}

TEST(Channel, StaysFiniteWhenTheRiverIsDry) {
  const Channel channel = channel_through(kMeasured);
  EXPECT_GT(mean_speed(channel, Discharge{}).si(), 0.0);
  EXPECT_GT(celerity(channel, Discharge{}).si(), 0.0);
}

TEST(ChannelOfAReach, IsItsOwnMeasurementFirst) {
  const Channel channel = channel_of(lantern_river(), described_by(0, 0), kUsual);
  EXPECT_FALSE(channel.guessed);
  EXPECT_NEAR(in_feet(width(channel, kUsual)), 150.4, 0.1);
}

TEST(ChannelOfAReach, ComesFromTheRunAndTheFloatOfItsNote) {
  // Run 4 ft over 1.4; 5.4 mi in 2.4 h over 1.25 is 2.64 ft/s; width 1800/(2.857 x 2.64) = 238.6 ft.
  const Channel channel = channel_of(lantern_river(), described_by({}, 0), kUsual);
  EXPECT_FALSE(channel.guessed);
  EXPECT_NEAR(in_feet(mean_depth(channel, kUsual)), 4.0 / 1.4, 1e-6);
  EXPECT_NEAR(in_feet_per_second(mean_speed(channel, kUsual)), 2.64, 1e-6);
  EXPECT_NEAR(in_feet(width(channel, kUsual)), 238.6, 0.1);
}

TEST(ChannelOfAReach, ComesFromTheSurfaceSpeedWhereNoFloatIsTimed) {
  River river = lantern_river();
  river.notes[0].float_time.reset();
  const Channel channel = channel_of(river, described_by({}, 0), kUsual);
  EXPECT_NEAR(in_feet_per_second(mean_speed(channel, kUsual)), 3.2 * 0.85 / 1.25, 1e-6);
}

TEST(ChannelOfAReach, IsNotReadFromABank) {
  River river = lantern_river();
  river.notes[0].waters = {water(WaterType::Bank, 1.0, 2.0, 1.0, 1800)};
  EXPECT_TRUE(channel_of(river, described_by({}, 0), kUsual).guessed);
}

TEST(ChannelOfAReach, IsAMarkedGuessByAreaWhereNobodyDescribedIt) {
  Reach reach = described_by({}, {});
  reach.drainage_area = square_kilometres(100.0);
  const Channel channel = channel_of(lantern_river(), reach, kUsual);
  EXPECT_TRUE(channel.guessed);
  // Bankfull at A = 100 km2: W = 2.70 x 100^0.352 = 13.66 m, D = 0.30 x 100^0.213 = 0.800 m, at 1.5 m/s 16.39 m3/s.
  EXPECT_NEAR(width(channel, cubic_metres_per_second(16.39)).si(), 13.66, 0.01);
  EXPECT_NEAR(mean_depth(channel, cubic_metres_per_second(16.39)).si(), 0.800, 0.001);
}

TEST(ChannelOfAReach, IsAMarkedGuessByFlowWhereNothingElseIsKnown) {
  const Channel channel = channel_of(lantern_river(), described_by({}, {}), cubic_metres_per_second(50.0));
  EXPECT_TRUE(channel.guessed);
  EXPECT_NEAR(carried(channel, cubic_metres_per_second(50.0)), 50.0, 1e-9);
}

TEST(ChannelOfAReach, TakesOnlyItsShareInASideChannel) {
  // Noted when the whole river ran 4000 cfs; the side channel carries a quarter of that.
  River river = lantern_river();
  river.reaches[2].waters = {water(WaterType::Run, 1.0, 2.8, 2.5, 4000)};
  Reach branch = described_by(2, {});
  branch.side_channel = 0;
  const Channel channel = channel_of(river, branch, kUsual);
  const Discharge quarter = cubic_feet_per_second(1000);
  EXPECT_NEAR(in_feet(mean_depth(channel, quarter)), 2.0, 1e-6);
  EXPECT_NEAR(in_feet(width(channel, quarter)), 1000.0 / (2.0 * 2.5 * 0.85 / 1.25), 1e-3);
}

}  // namespace
}  // namespace floatwright
