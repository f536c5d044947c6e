// Leopold & Maddock 1953, The hydraulic geometry of stream channels, USGS Professional Paper 252: at a station width,
// depth and speed grow as Q^0.26, Q^0.40 and Q^0.34 (means of 20 western stations). From memory (very high confidence).
#include <gtest/gtest.h>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

TEST(LeopoldMaddock1953, ChannelGrowsAsTheMeanStationDoes) {
  const Channel channel =
      channel_through({cubic_metres_per_second(50.0), metres(45.0), metres(1.0), mean_metres_per_second(1.1)});
  const Discharge q = cubic_metres_per_second(20.0), twice = cubic_metres_per_second(40.0);
  // 2^0.26, 2^0.40, 2^0.34
  EXPECT_NEAR(width(channel, twice) / width(channel, q), 1.19748, 1e-5);
  EXPECT_NEAR(mean_depth(channel, twice) / mean_depth(channel, q), 1.31951, 1e-5);
  EXPECT_NEAR(mean_speed(channel, twice) / mean_speed(channel, q), 1.26576, 1e-5);
}

TEST(LeopoldMaddock1953, ChannelGuessedFromFlowGrowsDownstreamAsTheMeanRiverDoes) {
  // From one river to one of 16 times the flow: width by 4, depth by 16^0.4 = 3.031, speed by 16^0.1 = 1.320. The three
  // coefficients multiply to 1.001, which the scaling takes out alike.
  const Discharge small = cubic_metres_per_second(5.0), large = cubic_metres_per_second(80.0);
  const Channel a = channel_from_flow(small), b = channel_from_flow(large);
  EXPECT_NEAR(width(b, large) / width(a, small), 4.0, 1e-9);
  EXPECT_NEAR(mean_depth(b, large) / mean_depth(a, small), 3.031, 1e-3);
  EXPECT_NEAR(mean_speed(b, large) / mean_speed(a, small), 1.320, 1e-3);
}

}  // namespace
}  // namespace floatwright
