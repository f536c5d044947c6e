// Kinematic celerity c = dQ/dA (Seddon's law; Ponce, Engineering Hydrology): beta = c/V is 5/3 in a wide channel under
// Manning, 3/2 under Chezy or in a trapezoid, 4/3 in a triangle. From memory; several sources agree.
#include <gtest/gtest.h>

#include <cmath>

#include "channel_shapes.hpp"
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

// What the program makes of a surveyed section: a power law through it, so c/V is one number and not a curve.
double beta_of(const SurveyedSection& section) {
  const Channel channel = channel_of_sections({section}, 0.002);
  const Discharge q = cubic_metres_per_second(20.0);
  return celerity(channel, q).si() / mean_speed(channel, q).si();
}

TEST(Ponce, SurveyedRectangleHasTheSlopeOfItsOwnSection) {
  // 30 m of bottom under walls of 2 m: the law runs through depths of a third of a metre to 2 m. At 1 m exactly 1.6250.
  const double at_a_metre = 5.0 / 3.0 - 4.0 / 3.0 * 1.0 / 32.0;
  ASSERT_NEAR(at_a_metre, 1.6250, 1e-4);
  EXPECT_NEAR(beta_of(trapezoid(metres(30.0), 0.0, metres(2.0), 0.035)), at_a_metre, 0.01);
  // As narrow as deep at the bank, where the walls tell: 5/3 to 11/9; a power law has one value within.
  const double narrow = beta_of(trapezoid(metres(2.0), 0.0, metres(2.0), 0.035));
  EXPECT_GT(narrow, 5.0 / 3.0 - 4.0 / 3.0 * 2.0 / 6.0);
  EXPECT_LT(narrow, 5.0 / 3.0 - 4.0 / 3.0 * (1.0 / 3.0) / (2.0 + 2.0 / 3.0));
}

TEST(Ponce, SurveyedTriangleAndTrapezoidLieWhereTheListHasThem) {
  EXPECT_NEAR(beta_of(trapezoid(metres(0.0), 10.0, metres(2.0), 0.035)), 4.0 / 3.0, 1e-6);
  // "about 1.44 to 1.5" of a trapezoid, between triangle and rectangle
  EXPECT_NEAR(beta_of(trapezoid(metres(10.0), 5.0, metres(2.0), 0.035)), 1.47, 0.05);
}

}  // namespace
}  // namespace floatwright
