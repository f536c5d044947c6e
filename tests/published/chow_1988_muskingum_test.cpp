// Chow, Maidment & Mays 1988, Applied Hydrology, Example 8.4.1, p. 258-259: inputs, coefficients and outflows as
// printed (the book's C1, C2, C3 are inflow now, inflow before, outflow before). Outflows are printed in whole cfs.
#include <gtest/gtest.h>

#include "engine/routing/muskingum.hpp"

namespace floatwright {
namespace {

const std::vector<double> kInflow{93,  137, 208, 320, 442, 546, 630, 678, 691, 675,
                                  634, 571, 477, 390, 329, 247, 184, 134, 108, 90};
const std::vector<double> kOutflow{85,  91,  114, 159, 233, 324, 420, 509, 578, 623,
                                   642, 635, 603, 546, 479, 413, 341, 274, 215, 170};

TEST(Chow1988, CoefficientsOfExample841) {
  const auto w = muskingum_weights(hours(2.3), 0.15, hours(1));
  EXPECT_NEAR(w.inflow_now, 0.0631, 5e-5);  // four printed figures
  EXPECT_NEAR(w.inflow_before, 0.3442, 5e-5);
  EXPECT_NEAR(w.outflow_before, 0.5927, 5e-5);
}
TEST(Chow1988, OutflowsOfExample841) {
  std::vector<Discharge> inflow;
  for (const double q : kInflow) inflow.push_back(cubic_feet_per_second(q));
  const auto outflow = routed(inflow, muskingum_weights(hours(2.3), 0.15, hours(1)), cubic_feet_per_second(85));
  ASSERT_EQ(outflow.size(), kOutflow.size());
  for (std::size_t i = 0; i < kOutflow.size(); ++i)
    EXPECT_NEAR(in_cubic_feet_per_second(outflow[i]), kOutflow[i], 0.51) << "hour " << i + 1;  // printed to 1 cfs
}

}  // namespace
}  // namespace floatwright
