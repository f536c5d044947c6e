#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

#include "engine/routing/brought_down.hpp"
#include "small_river.hpp"

namespace floatwright {
namespace {

using std::chrono::minutes;

constexpr Period kStep = minutes{15};
const WaveTravel kTravel{cubic_metres_per_second(30), floatwright::hours(2.0), 0.34, {}};
const Discharge kNoCap = cubic_metres_per_second(1000);

std::vector<Discharge> flows(const std::vector<double>& values) {
  std::vector<Discharge> out;
  for (const double v : values) out.push_back(cubic_metres_per_second(v));
  return out;
}
// Steady at `before`, from step 40 on at `after`.
std::vector<Discharge> stepped(double before, double after) {
  std::vector<double> values(200, before);
  std::fill(values.begin() + 40, values.end(), after);
  return flows(values);
}
double hours_of(double q, double m = 0.34) { return 2.0 * std::pow(30.0 / q, m); }
double total(const std::vector<Discharge>& flow) {
  return std::accumulate(flow.begin(), flow.end(), 0.0, [](double sum, Discharge q) { return sum + q.si(); });
}
// Hours from the change above (the edge before step 40) until `share` of a sharp change has passed below.
double front_after(const std::vector<Discharge>& below, double before, double after) {
  double passed = 0.0;  // m3/s steps since the change set out
  for (std::size_t i = 40; i < below.size(); ++i) passed += below[i].si() - before;
  return 0.25 * (160.0 - passed / (after - before));
}

TEST(BroughtDown, LeavesASteadyFlowSteady) {
  for (const Discharge q : brought_down(flows(std::vector<double>(50, 12.0)), kStep, kTravel, kNoCap))
    EXPECT_NEAR(q.si(), 12.0, 1e-9);
}
// A rise is a shock: it travels with the change of flow over the change of area (Lighthill & Whitham 1955, from
// memory). With t(Q) = t0 (Q0/Q)^m the reach holds S(Q) = t0 Q0^m Q^(1-m)/(1-m) at a steady flow, so its hour is
// (S(after) - S(before))/(after - before).
TEST(BroughtDown, CarriesARiseAsTheShockOfTheKinematicWave) {
  const auto held = [](double q) { return 2.0 * std::pow(30.0, 0.34) * std::pow(q, 0.66) / 0.66; };  // m3/s h
  const auto below = brought_down(stepped(8, 40), kStep, kTravel, kNoCap);
  EXPECT_NEAR(front_after(below, 8, 40), (held(40) - held(8)) / 32.0, 1e-6);
  const auto between =
      std::count_if(below.begin(), below.end(), [](Discharge q) { return q.si() > 8.01 && q.si() < 39.99; });
  EXPECT_LE(between, 1);  // it stays as sharp as it set out
}
// A fall draws out: each flow between keeps its own travel time (the same theory).
TEST(BroughtDown, DrawsAFallOutFlowByFlow) {
  const auto below = brought_down(stepped(40, 8), kStep, kTravel, kNoCap);
  for (const double q : {35.0, 25.0, 15.0, 10.0}) {
    double hours_since = 0.25 * 0.5;  // to the middle of the step
    std::size_t i = 40;
    while (below[i].si() > q) ++i;
    hours_since += 0.25 * static_cast<double>(i - 40) - 0.25 * (q - below[i].si()) / (below[i - 1] - below[i]).si();
    EXPECT_NEAR(hours_since, hours_of(q), 0.02) << q;
  }
}
TEST(BroughtDown, LosesNoWater) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> flow(0.0, 80.0);
  for (int round = 0; round < 20; ++round) {
    std::vector<double> values(400, 10.0);
    for (std::size_t i = 40; i < 200; ++i) values[i] = flow(random);
    for (const Duration spread : {Duration{}, floatwright::hours(0.6)}) {
      WaveTravel travel = kTravel;
      travel.spread = spread;
      const auto below = brought_down(flows(values), kStep, travel, cubic_metres_per_second(60));
      EXPECT_NEAR(total(below), total(flows(values)), 1e-6 * total(below));
      for (const Discharge q : below) EXPECT_GE(q.si(), 0.0);
    }
  }
}
TEST(BroughtDown, KeepsAConstantLagWhereTheExponentIsNone) {
  WaveTravel travel = kTravel;
  travel.exponent = 0.0;
  const auto above = stepped(8, 40), below = brought_down(above, kStep, travel, kNoCap);
  for (std::size_t i = 8; i < above.size(); ++i) EXPECT_NEAR(below[i].si(), above[i - 8].si(), 1e-9);
}
TEST(BroughtDown, SpreadsAChangeAboutTheSameHour) {
  WaveTravel travel = kTravel;
  travel.spread = floatwright::hours(0.6);
  const auto sharp = brought_down(stepped(29, 31), kStep, kTravel, kNoCap);
  const auto spread = brought_down(stepped(29, 31), kStep, travel, kNoCap);
  EXPECT_NEAR(front_after(spread, 29, 31), front_after(sharp, 29, 31), 0.01);
  EXPECT_LT(spread[52].si(), 31.0 - 0.1);
}
// A forecast may use what is brought down only if it does not see its own future.
TEST(BroughtDown, DependsOnNothingLaterThanItSays) {
  for (const double cap : {20.0, 60.0, 1000.0})
    for (const Duration spread : {Duration{}, floatwright::hours(0.6)}) {
      WaveTravel travel = kTravel;
      travel.spread = spread;
      const Discharge fastest = cubic_metres_per_second(cap);
      const std::size_t ahead = steps_known_ahead(kStep, travel, fastest);
      const auto known = stepped(10, 50);
      for (const std::size_t newest : {39u, 45u, 90u}) {
        auto other = known;
        for (std::size_t i = newest + 1; i < other.size(); ++i)
          other[i] = cubic_metres_per_second(i % 2 == 0 ? 0.0 : 300.0);
        const auto a = brought_down(known, kStep, travel, fastest), b = brought_down(other, kStep, travel, fastest);
        for (std::size_t i = 0; i <= newest + ahead; ++i) EXPECT_NEAR(a[i].si(), b[i].si(), 1e-9) << i << " " << newest;
      }
    }
}

Series<Discharge> record_of(const std::vector<Discharge>& flow) {
  Series<Discharge> record;
  for (std::size_t i = 0; i < flow.size(); ++i) {
    record.times.push_back(kNow + kStep * static_cast<int>(i));
    record.values.push_back(flow[i]);
  }
  return record;
}
River timed_river() {
  River river = bare_river();
  river.fitted_lags = {{"heron", "ferry", cubic_metres_per_second(30), floatwright::hours(5), 0.34, 1.0, 40}};
  return river;
}

TEST(FromAbove, BringsAGaugesRecordDownByTheFittedLag) {
  const River river = timed_river();
  const auto from = from_above(river, river_graph(river), 0, 1, record_of(stepped(20, 40)));
  ASSERT_FALSE(from.routed.empty());
  EXPECT_EQ(from.routed.times.back(), kNow + kStep * 199 + from.lag);
  EXPECT_GE(from.lag, minutes{180});
  EXPECT_LE(from.lag, minutes{300});
  EXPECT_NEAR(from.routed.values.front().si(), 20.0, 1e-6);
  EXPECT_NEAR(from.routed.values.back().si(), 40.0, 0.5);
}
TEST(FromAbove, MakesUpNothingAcrossAGap) {
  const River river = timed_river();
  Series<Discharge> record = record_of(stepped(20, 40));
  record.times.erase(record.times.begin() + 60, record.times.begin() + 140);  // 20 h
  record.values.erase(record.values.begin() + 60, record.values.begin() + 140);
  const auto routed = from_above(river, river_graph(river), 0, 1, record).routed;
  Period widest{};
  for (std::size_t i = 1; i < routed.size(); ++i) widest = std::max(widest, routed.times[i] - routed.times[i - 1]);
  EXPECT_GE(widest, std::chrono::hours{19});
}
TEST(FromAbove, SaysNothingAcrossADamOrUpTheRiver) {
  River river = timed_river();
  const auto record = record_of(stepped(20, 40));
  EXPECT_TRUE(from_above(river, river_graph(river), 1, 0, record).routed.empty());
  river.dams = {heron_dam()};
  river.dams[0].place = river_mile(35);
  EXPECT_TRUE(from_above(river, river_graph(river), 0, 1, record).routed.empty());
}
TEST(FromAbove, KnowsARampingDamAboveBothGauges) {
  River river = timed_river();
  river.dams = {heron_dam()};
  EXPECT_TRUE(from_above(river, river_graph(river), 0, 1, record_of(stepped(20, 40))).below_dam);
}

}  // namespace
}  // namespace floatwright
