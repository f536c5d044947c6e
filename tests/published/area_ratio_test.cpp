// Drainage-area ratio Qu = Qg (Au/Ag)^phi. phi 1 is the default; Asquith, Roussel & Vrabel 2006 (USGS SIR 2006-5286)
// give 0.700 to 0.935 by streamflow percentile. The numbers follow from the stated formula (250 cfs, 1500 and 1200
// mi2). The range 0.5 to 1.5 is commonly quoted as guidance of the US Geological Survey, 0.3 to 3 as the outer limit.
#include <gtest/gtest.h>

#include "engine/routing/area_ratio.hpp"

namespace floatwright {
namespace {

double cfs_at(double phi) { return 250.0 * area_ratio(square_miles(1200), square_miles(1500), phi)->factor; }

TEST(AreaRatio, CarriesFlowByThePowerOfTheAreas) {
  EXPECT_NEAR(cfs_at(1.0), 200.0, 0.005);  // two printed decimals
  EXPECT_NEAR(cfs_at(0.9), 204.51, 0.005);
  EXPECT_NEAR(cfs_at(0.8), 209.13, 0.005);
}
TEST(AreaRatio, IsInDoubtPastHalfAndOneAndAHalfAndRefusedPastThreeTenthsAndThree) {
  const auto of = [](double areas) { return area_ratio(square_miles(100 * areas), square_miles(100), 1.0); };
  EXPECT_FALSE(of(1.4)->in_doubt);
  EXPECT_TRUE(of(1.6)->in_doubt);
  EXPECT_TRUE(of(0.45)->in_doubt);
  EXPECT_FALSE(of(0.29).has_value());
  EXPECT_FALSE(of(3.1).has_value());
  EXPECT_FALSE(area_ratio(square_miles(10), square_miles(0), 1.0).has_value());
}

}  // namespace
}  // namespace floatwright
