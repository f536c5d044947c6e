// Ponce, Engineering Hydrology, Example 9-1, Table 9-1 (10-1 in the second edition), as carried in the test "ponce01"
// of the US Geological Survey's MODFLOW 6: inputs and outflows; tolerance there 0.06 m3/s.
#include <gtest/gtest.h>

#include "engine/routing/muskingum.hpp"

namespace floatwright {
namespace {

const std::vector<double> kInflow{352,  587,    1353, 2725, 4408.5, 5987,  6704, 6951, 6839, 6207, 5346, 4560, 3861.5,
                                  3007, 2357.5, 1779, 1405, 1123,   952.5, 730,  605,  514,  422,  352,  352,  352};
const std::vector<double> kOutflow{352.0,  382.7,  571.4,  1090.2, 2020.6, 3264.7, 4541.8, 5514.1, 6124.2,
                                   6352.6, 6177.0, 5713.2, 5120.7, 4461.7, 3744.5, 3066.0, 2457.7, 1963.2,
                                   1575.6, 1275.7, 1022.1, 828.9,  680.0,  558.7,  468.8,  418.0};

TEST(Ponce, CoefficientsOfExample91) {
  const auto w = muskingum_weights(hours(48), 0.1, hours(24));
  // a unit in the fourth figure: the printed three are rounded so that they add to 1
  EXPECT_NEAR(w.inflow_now, 0.1304, 1e-4);
  EXPECT_NEAR(w.inflow_before, 0.3044, 1e-4);
  EXPECT_NEAR(w.outflow_before, 0.5652, 1e-4);
}
TEST(Ponce, OutflowsOfTable91) {
  std::vector<Discharge> inflow;
  for (const double q : kInflow) inflow.push_back(cubic_metres_per_second(q));
  const auto outflow = routed(inflow, muskingum_weights(hours(48), 0.1, hours(24)), cubic_metres_per_second(352));
  ASSERT_EQ(outflow.size(), kOutflow.size());
  for (std::size_t i = 0; i < kOutflow.size(); ++i)
    EXPECT_NEAR(in_cubic_metres_per_second(outflow[i]), kOutflow[i], 0.06) << "day " << i;  // MODFLOW's own tolerance
}

// The same book's problem on the rate of rise: a river 300 m wide that rises 3 mm an hour all along 20 km and carries
// 1175 m3/s at their lower end takes in 1175 + 300 * 20000 * 0.003/3600 = 1180 m3/s at the upper one, whatever the
// wave's speed c = dQ/dA: the flow there must then grow by c B dh/dt.
TEST(Ponce, RiverThatRisesEvenlyKeepsBackTheWaterItRisesBy) {
  const double rise = 300.0 * 0.003 / 3600.0;  // of the wetted section, m2/s
  for (const double c : {1.0, 1.5, 2.5}) {
    const WavePath river{kilometres(20.0), Duration::from_si(20000.0 / c), kilometres(2.0)};
    std::vector<Discharge> inflow;
    for (int h = 0; h <= 72; ++h) inflow.push_back(cubic_metres_per_second(1100.0 + c * rise * 3600.0 * h));
    const auto outflow = routed(inflow, river, hours(1.0));
    EXPECT_NEAR((inflow.back() - outflow.back()).si(), 5.0, 1e-3) << c;
  }
}

}  // namespace
}  // namespace floatwright
