#include "adapters/out/figure/axis.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

// 1, 2, 5 and their tens are the steps that graph paper is divided by (common practice, no source).
TEST(Axis, StepsInOnesTwosAndFives) {
  EXPECT_DOUBLE_EQ(round_step(4.0, 5), 1.0);
  EXPECT_DOUBLE_EQ(round_step(450.0, 5), 100.0);
  EXPECT_DOUBLE_EQ(round_step(510.0, 5), 200.0);
  EXPECT_DOUBLE_EQ(round_step(1010.0, 5), 500.0);
  EXPECT_DOUBLE_EQ(round_step(0.3, 5), 0.1);
}

TEST(Axis, WritesTheMultiplesFromLeastToMost) {
  EXPECT_EQ(multiples(200.0, 1400.0, 2000.0), (std::vector<double>{1400.0, 1600.0, 1800.0, 2000.0}));
  EXPECT_EQ(multiples(5.0, 1.0, 4.0), std::vector<double>{});
}

TEST(Axis, RunsFromItsStartToItsEnd) {
  const Axis down{100.0, 200.0, 300.0, 0.0};
  EXPECT_DOUBLE_EQ(down.at(100.0), 300.0);
  EXPECT_DOUBLE_EQ(down.at(150.0), 150.0);
  EXPECT_DOUBLE_EQ(down.at(200.0), 0.0);
}

}  // namespace
}  // namespace floatwright
