#include "engine/river/shares.hpp"

#include <gtest/gtest.h>

#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

double share(double cfs) { return side_share(lantern_river().side_channels[0], cubic_feet_per_second(cfs)); }

TEST(SideShare, IsAsTypedAndLinearBetween) {
  EXPECT_DOUBLE_EQ(share(800), 0.05);
  EXPECT_NEAR(share(2400), 0.15, 1e-12);
  EXPECT_DOUBLE_EQ(share(4000), 0.25);
}

TEST(SideShare, IsFlatBeyondWhatWasTyped) {
  EXPECT_DOUBLE_EQ(share(100), 0.05);
  EXPECT_DOUBLE_EQ(share(9000), 0.25);
}

TEST(SideShare, IsNoneWhenNobodyTypedOne) { EXPECT_EQ(side_share(SideChannel{}, cubic_feet_per_second(1800)), 0.0); }

TEST(OwnShare, LosesNoWaterAtASplit) {
  const River river = lantern_river();
  Reach stem, branch;
  stem.from = branch.from = river_mile(38.6);
  stem.to = branch.to = river_mile(37.4);
  branch.side_channel = 0;
  for (const double cfs : {500.0, 1800.0, 7000.0}) {
    const Discharge q = cubic_feet_per_second(cfs);
    EXPECT_DOUBLE_EQ(own_share(river, stem, q) + own_share(river, branch, q), 1.0) << cfs;
  }
}

}  // namespace
}  // namespace floatwright
