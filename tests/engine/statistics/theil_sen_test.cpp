#include "engine/statistics/theil_sen.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace floatwright {
namespace {

TEST(TheilSen, FindsTheLineThroughPointsThatLieOnOne) {
  const auto line = theil_sen(std::vector{1.0, 2.0, 4.0, 8.0}, std::vector{5.0, 7.0, 11.0, 19.0});
  ASSERT_TRUE(line.has_value());
  EXPECT_DOUBLE_EQ(line->slope, 2.0);
  EXPECT_DOUBLE_EQ(line->at(10.0), 23.0);
}

TEST(TheilSen, IsTheMedianOfTheSlopesOfAllPairs) {
  // Pairs of (0,0), (1,1), (2,4): slopes 1, 2 and 3, median 2; what is left 0, -1, 0, median 0.
  const auto line = theil_sen(std::vector{0.0, 1.0, 2.0}, std::vector{0.0, 1.0, 4.0});
  EXPECT_DOUBLE_EQ(line->slope, 2.0);
  EXPECT_DOUBLE_EQ(line->intercept, 0.0);
}

TEST(TheilSen, IsNotBentByAQuarterOfWildPointsFarOut) {
  std::vector<double> x, y;
  for (int i = 0; i < 30; ++i) {
    x.push_back(i);
    y.push_back(3.0 - 0.5 * i);
  }
  for (int i = 0; i < 8; ++i) {
    x.push_back(1000.0 + i);
    y.push_back(1e6);
  }
  EXPECT_DOUBLE_EQ(theil_sen(x, y)->slope, -0.5);
}

TEST(TheilSen, IsNoneWhereNoPairLiesApart) {
  EXPECT_FALSE(theil_sen(std::vector{2.0, 2.0}, std::vector{1.0, 5.0}));
  EXPECT_FALSE(theil_sen(std::vector{2.0, 2.05}, std::vector{1.0, 5.0}, 0.1));
  EXPECT_FALSE(theil_sen({}, {}));
}

}  // namespace
}  // namespace floatwright
