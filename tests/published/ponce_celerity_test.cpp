// Kinematic celerity c = dQ/dA (Seddon's law; Ponce, Engineering Hydrology): beta = c/V is 5/3 in a wide channel under
// Manning, 3/2 under Chezy or in a trapezoid, 4/3 in a triangle. From memory; several sources agree.
#include <gtest/gtest.h>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

// With V = k Q^m, beta = 1/(1-m). Manning in a wide section, V ~ d^(2/3) and Q ~ d^(5/3), so m = 2/5; Chezy, V ~
// d^(1/2) and Q ~ d^(3/2), so m = 1/3; a triangle under Manning, V ~ d^(2/3) and Q ~ d^(8/3), so m = 1/4.
double beta(double m) {
  Channel channel;
  channel.m = m;
  channel.f = 1.0 - channel.b - m;
  const Discharge q = cubic_metres_per_second(60.0);
  return celerity(channel, q).si() / mean_speed(channel, q).si();
}

TEST(Ponce, WideChannelUnderManning) { EXPECT_NEAR(beta(2.0 / 5.0), 5.0 / 3.0, 1e-12); }
TEST(Ponce, WideChannelUnderChezy) { EXPECT_NEAR(beta(1.0 / 3.0), 3.0 / 2.0, 1e-12); }
TEST(Ponce, TriangularChannelUnderManning) { EXPECT_NEAR(beta(1.0 / 4.0), 4.0 / 3.0, 1e-12); }

TEST(Ponce, NaturalChannelOfMeanExponentsLiesNearTheTrapezoid) { EXPECT_NEAR(beta(Channel{}.m), 1.5, 0.02); }

TEST(Ponce, CelerityIsTheSlopeOfFlowAgainstSection) {
  // dQ/dA by difference, one part in a million either side.
  const Channel channel =
      channel_through({cubic_metres_per_second(50.0), metres(45.0), metres(1.0), mean_metres_per_second(1.1)});
  const auto section = [&](double q) {
    return width(channel, cubic_metres_per_second(q)).si() * mean_depth(channel, cubic_metres_per_second(q)).si();
  };
  const double slope = 50.0 * 2e-6 / (section(50.0 * (1.0 + 1e-6)) - section(50.0 * (1.0 - 1e-6)));
  EXPECT_NEAR(celerity(channel, cubic_metres_per_second(50.0)).si(), slope, 1e-6);
}

}  // namespace
}  // namespace floatwright
