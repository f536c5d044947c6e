#include "engine/routing/muskingum.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

// One of 10^low to 10^high, even in logs.
rc::Gen<double> log_even(double low, double high) {
  return rc::gen::map(rc::gen::inRange(0, 10001),
                      [=](int i) { return std::pow(10.0, low + (high - low) * i / 10000.0); });
}
WavePath random_path() {
  return {metres(*log_even(1.5, 5.0)), seconds(*log_even(1.0, 5.5)), metres(*log_even(0.0, 4.5))};
}
double sum_si(const std::vector<Discharge>& flow) {
  double sum = 0.0;
  for (const Discharge q : flow) sum += q.si();
  return sum;
}

TEST(Muskingum, HasNoNegativeCoefficientForAnyCourantNumberAndDiffusion) {
  EXPECT_TRUE(rc::check([] {
    const auto w = muskingum_cunge_weights(*log_even(-3, 3), *log_even(-3, 3));
    RC_ASSERT(w.inflow_now >= 0.0);
    RC_ASSERT(w.inflow_before >= 0.0);
    RC_ASSERT(w.outflow_before >= 0.0);
    RC_ASSERT(std::abs(w.inflow_now + w.inflow_before + w.outflow_before - 1.0) < 1e-12);
  }));
}
TEST(Muskingum, HasNoNegativeCoefficientForAnyRiverAndStep) {
  EXPECT_TRUE(rc::check([] {
    const RoutingCut cut = routing_cut(random_path(), seconds(*log_even(1.5, 4.5)));
    RC_ASSERT(cut.pieces >= 1u);
    RC_ASSERT(std::min({cut.weights.inflow_now, cut.weights.inflow_before, cut.weights.outflow_before}) >= 0.0);
  }));
}
// A pulse on a steady flow: what goes in comes out, once the tail has passed.
TEST(Muskingum, KeepsMassToRoundOff) {
  EXPECT_TRUE(rc::check([] {
    const WavePath path{metres(*log_even(2.0, 4.5)), seconds(*log_even(2.0, 4.5)), metres(*log_even(0.0, 3.5))};
    std::vector<Discharge> inflow(3000, cubic_metres_per_second(30));
    for (std::size_t i = 10; i < 40; ++i) inflow[i] = cubic_metres_per_second(*log_even(1.0, 2.5));
    const auto outflow = routed(inflow, path, minutes(15));
    RC_ASSERT(std::abs(sum_si(outflow) - sum_si(inflow)) < 1e-9 * sum_si(inflow));
  }));
}
TEST(Muskingum, NeverLeavesTheRangeOfItsInflow) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Discharge> inflow;
    for (int i = 0; i < 60; ++i) inflow.push_back(cubic_metres_per_second(*log_even(0.0, 2.0)));
    const auto outflow = routed(inflow, random_path(), minutes(15));
    const auto [least, most] = std::minmax_element(inflow.begin(), inflow.end());
    for (const Discharge q : outflow)
      RC_ASSERT(q.si() >= least->si() * (1 - 1e-12) && q.si() <= most->si() * (1 + 1e-12));
  }));
}
TEST(Muskingum, CutsTheRiverSoThatTheCourantNumberIsNearestToOne) {
  EXPECT_EQ(routing_cut({kilometres(20), hours(2), metres(300)}, minutes(15)).pieces, 8u);
  EXPECT_EQ(routing_cut({kilometres(20), hours(2), metres(9000)}, minutes(15)).pieces,
            4u);  // D would be 3.6: joined to 1.8
}
TEST(Muskingum, PassesAFlowUnchangedWhereThereIsNoTravel) {
  const std::vector<Discharge> inflow{cubic_metres_per_second(1), cubic_metres_per_second(9),
                                      cubic_metres_per_second(4)};
  EXPECT_EQ(routed(inflow, WavePath{}, minutes(15)), inflow);
}
// The lag of the centre of a pulse is the travel time: sum of t Q over sum of Q, exact for Muskingum (first moment K).
TEST(Muskingum, DelaysAPulseByItsTravelTime) {
  EXPECT_TRUE(rc::check([] {
    const WavePath path{metres(*log_even(2.0, 4.5)), seconds(*log_even(2.0, 4.5)), metres(*log_even(0.0, 3.5))};
    std::vector<Discharge> inflow(3000);
    inflow[5] = cubic_metres_per_second(100);
    const auto outflow = routed(inflow, path, minutes(15));
    double moment = 0.0;
    for (std::size_t i = 0; i < outflow.size(); ++i) moment += (static_cast<double>(i) - 5.0) * outflow[i].si();
    RC_ASSERT(std::abs(moment / 100.0 * 900.0 - in_seconds(path.travel)) < 1e-6 * in_seconds(path.travel) + 1e-3);
  }));
}

// Outflow of a linear reservoir after a step of its inflow: 1 - exp(-t/K) (Chow, Maidment & Mays 1988, section 8.5;
// from memory, and the solution of K dO/dt = I - O).
TEST(Muskingum, EmptiesALakeAsALinearReservoir) {
  std::vector<Discharge> inflow(200, cubic_metres_per_second(1.0));
  inflow[0] = Discharge{};
  const RoutingCut cut = reservoir_cut(hours(6), minutes(15));
  ASSERT_EQ(cut.pieces, 1u);
  const auto outflow = routed(inflow, cut.weights, Discharge{});
  for (std::size_t i = 4; i < 200; i += 7) {
    const double t = (static_cast<double>(i) - 0.5) / 24.0;  // the step lies half way between two rows
    EXPECT_NEAR(outflow[i].si(), 1.0 - std::exp(-t), 1e-3) << i;
  }
  EXPECT_EQ(reservoir_cut(Duration{}, minutes(15)).pieces, 0u);
}

}  // namespace
}  // namespace floatwright
