#include "engine/routing/closing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace floatwright {
namespace {

constexpr Period kStep = std::chrono::minutes{15};
constexpr std::size_t kDay = 96;

template <class F>
std::vector<Discharge> flow_of(std::size_t n, F at) {
  std::vector<Discharge> flow;
  for (std::size_t i = 0; i < n; ++i) flow.push_back(cubic_metres_per_second(at(static_cast<double>(i))));
  return flow;
}
double daily(double i) { return std::sin(2 * std::numbers::pi * i / kDay); }

TEST(Closing, FindsASteadyInflow) {
  const auto closing = closing_inflow(flow_of(5 * kDay, [](double) { return 40.0; }),
                                      flow_of(5 * kDay, [](double) { return 44.0; }), kStep, 0.3);
  for (const Discharge q : closing.inflow) EXPECT_NEAR(q.si(), 4.0, 1e-9);
  EXPECT_NEAR(closing.largest_share, 0.1, 1e-9);
}
TEST(Closing, MakesNoWaterOfAnErrorInTiming) {
  const auto routed = flow_of(5 * kDay, [](double i) { return 40.0 + 5.0 * daily(i); });
  const auto gauge = flow_of(5 * kDay, [](double i) { return 40.0 + 5.0 * daily(i - 8); });  // two hours late
  for (const Discharge q : closing_inflow(routed, gauge, kStep, 0.3).inflow) EXPECT_NEAR(q.si(), 0.0, 1e-9);
}
TEST(Closing, MeetsTheGaugeAsADailyMean) {
  const auto routed = flow_of(5 * kDay, [](double i) { return 40.0 + 5.0 * daily(i); });
  const auto gauge = flow_of(5 * kDay, [](double i) { return 42.0 + 4.0 * daily(i - 8) + 4.0 * i / (5.0 * kDay); });
  const auto inflow = closing_inflow(routed, gauge, kStep, 0.3).inflow;
  std::vector<Discharge> closed;
  for (std::size_t i = 0; i < routed.size(); ++i) closed.push_back(routed[i] + inflow[i]);
  const auto of_closed = daily_mean(closed, kStep), of_gauge = daily_mean(gauge, kStep);
  for (std::size_t i = 0; i < closed.size(); ++i)
    EXPECT_NEAR(of_closed[i].si(), of_gauge[i].si(), 0.05);  // 0.1 % of the flow
}
TEST(Closing, MayTakeWaterOut) {
  const auto closing = closing_inflow(flow_of(3 * kDay, [](double) { return 40.0; }),
                                      flow_of(3 * kDay, [](double) { return 35.0; }), kStep, 0.3);
  EXPECT_NEAR(closing.inflow[100].si(), -5.0, 1e-9);
}
TEST(Closing, IsHeldToItsBoundAndTellsWhatWasAskedFor) {
  const auto closing = closing_inflow(flow_of(3 * kDay, [](double) { return 40.0; }),
                                      flow_of(3 * kDay, [](double) { return 60.0; }), kStep, 0.3);
  EXPECT_NEAR(closing.inflow[100].si(), 12.0, 1e-9);
  EXPECT_NEAR(closing.largest_share, 0.5, 1e-9);
}

}  // namespace
}  // namespace floatwright
