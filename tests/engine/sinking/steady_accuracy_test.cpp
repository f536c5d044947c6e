// How near steady shapes are to a plain solver of far finer steps (tests/bench/plain_steady.hpp: nothing of it is the
// engine's), and that the error falls as the order of the method says.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "engine/sinking/line_step.hpp"
#include "engine/sinking/settle.hpp"
#include "tests/bench/plain_steady.hpp"
#include "tests/engine/sinking/steady_cases.hpp"

namespace floatwright {
namespace {

constexpr double kPromised = 0.002;  // of the fly's depth
constexpr int kTimes = 20;           // the plain solver's 16, 32 and 64 steps

double held(const SteadyCase& in, double depth) { return in.has_bed ? std::min(depth, in.depth.si()) : depth; }

// Over a bed where the stream dies away two depths may both be answers: then ours must be one, to a far finer measure.
bool answers_too(const SteadyCase& in, double depth) {
  return std::abs(plain::end_depth(in, depth, kTimes)) < 0.1 * kPromised * depth;
}

void is_within_the_promise(const SteadyCase& in, int number) {
  const auto found = steady_shape(in);
  const auto reference = plain::steady(in, kTimes);
  ASSERT_TRUE(found) << "case " << number << ": " << found.why_absent();
  ASSERT_TRUE(reference) << "case " << number;
  const double depth = found->fly_depth.si(), wanted = held(in, reference->fly_depth);  // m
  if (std::abs(depth - wanted) <= kPromised * wanted) return;
  EXPECT_TRUE(answers_too(in, depth)) << "case " << number << ": " << depth << " m, not " << wanted;
}

class SteadyAccuracy : public testing::TestWithParam<int> {};

TEST_P(SteadyAccuracy, IsWithinTwoTenthsOfAPerCentInAThousandCasesAndAnswersAll) {
  constexpr int kCases = 250;
  SteadyCases cases(static_cast<std::uint64_t>(GetParam()));
  for (int i = 0; i < kCases; ++i) is_within_the_promise(cases.next(), i);
}
INSTANTIATE_TEST_SUITE_P(InFourParts, SteadyAccuracy, testing::Range(1, 5));

// A weightless line under a weight of 1 N, 0.6 N/m of drag where it lies square to the stream and none along it, is a
// catenary on its side (checks by closed form: depth = T/R asinh(R s/T)). Third order: half the step, an eighth of the
// error.
TEST(LineStep, HalvingTheStepShowsTheThirdOrder) {
  const double load = 0.6, length = 5.0;  // N/m, m
  const auto slope = [&](double, const LineState& at) {
    const double t = std::sqrt(at.pull2()), tx = at.px / t, ty = at.py / t;
    return LineState{load * ty * ty * ty, 0.0, -load * ty * ty * tx, -tx, -ty};
  };
  const double exact = -std::asinh(load * length) / load;  // m
  double before = 0.0;
  for (const int steps : {16, 32, 64, 128}) {
    LineState at{0.0, 0.0, 1.0, 0.0, 0.0}, k1 = slope(0.0, at);
    for (int i = 0; i < steps; ++i) {
      const LineStep step = line_step(slope, 0.0, length / steps, at, k1);
      at = step.end, k1 = step.slope_there;
    }
    const double error = std::abs(at.y - exact);
    if (before > 0.0) {
      EXPECT_NEAR(std::log2(before / error), 3.0, 0.25) << steps << " steps";
    }
    before = error;
  }
}

// The error that a step may have is what the depth of a shot has: a tenth of it, a tenth of the error.
TEST(UpwardLine, TheErrorFollowsTheToleranceOfAStep) {
  SteadyCases cases(11);
  double coarse = 0.0, fine = 0.0;
  for (int i = 0; i < 100; ++i) {
    const SteadyCase in = cases.next();
    const Stream stream(in.surface_speed, in.profile, in.depth);
    const auto end = [&](double tolerance) {
      const UpwardLine line(in.parts, in.fly, water_at(in.temperature), stream, in.tangential_drag, in.end, tolerance);
      return line.shoot(in.depth * 0.5, {in.line_along, in.line_across}, line.length()).end_depth.si();
    };
    const double exact = end(1e-7), height = in.depth.si() * 0.5 - exact;  // m
    coarse += std::abs(end(4e-3) - exact) / height, fine += std::abs(end(4e-4) - exact) / height;
  }
  EXPECT_GT(coarse / fine, 4.0);
  EXPECT_LT(coarse / fine, 25.0);
}

// Cases that once had a wrong answer, or none.
LinePart leader(double length, double across, double density) {
  return {PartKind::Leader, metres(length), millimetres(across), kilograms_per_cubic_metre(density), {}, {}};
}
LinePart sinking(double length, double across, double rate) {
  return {PartKind::Sinking, metres(length), millimetres(across), {}, metres_per_second(rate), metres_per_second(rate)};
}
LinePart floating(double length, double across, double density) {
  return {PartKind::Floating, metres(length), millimetres(across), kilograms_per_cubic_metre(density), {}, {}};
}

TEST(SteadyAccuracyFound, ALightFlyInAFastStreamTakesUpItsAngleWithinMillimetres) {
  for (const double speed : {1.0, 2.0, 3.0, 4.0}) {
    SteadyCase in;
    in.parts = {leader(2.5, 0.4, 1140.0), sinking(3.0, 1.0, 0.1)};
    in.fly = {newtons(2e-5), metres_per_second(0.5), square_metres(2e-8)};
    in.depth = metres(3.0);
    in.surface_speed = surface_metres_per_second(speed);
    in.end = SurfaceEnd::ButtAtSurface;
    is_within_the_promise(in, static_cast<int>(speed));
  }
}

TEST(SteadyAccuracyFound, InStillWaterABodyIsPulledUnderAsFarAsItCarries) {
  SteadyCase in;
  in.parts = {leader(0.707, 0.34, 1780.0), sinking(2.425, 0.78, 0.208), floating(11.7, 1.87, 831.0)};
  in.fly = {newtons(5.2e-5), metres_per_second(0.2), square_metres(2.3e-7)};
  in.depth = metres(30.0);
  is_within_the_promise(in, 0);
}

TEST(SteadyAccuracyFound, ABodyHangsUnderABoatThatGoesWithTheStream) {
  SteadyCase in;
  in.parts = {leader(0.462, 0.16, 1780.0), floating(18.8, 1.67, 839.0)};
  in.fly = {newtons(0.00133), metres_per_second(0.2), square_metres(5.94e-5)};
  in.depth = metres(12.2);
  in.surface_speed = surface_metres_per_second(0.22674);
  in.line_along = metres_per_second(0.22722);
  in.profile.law = Profile::Law::Log;
  in.profile.roughness = metres(0.0029);
  is_within_the_promise(in, 0);
}

TEST(SteadyAccuracyFound, AStreamThatDiesAwayAtTheBedBendsTheSearch) {
  SteadyCase in;
  in.parts = {leader(0.61, 0.2, 1140.0), sinking(7.185, 0.74, 0.07235), floating(6.46, 1.74, 945.0)};
  in.fly = {newtons(0.028), metres_per_second(0.3), square_metres(6.67e-4)};
  in.depth = metres(0.2931);
  in.surface_speed = surface_metres_per_second(2.796);
  in.profile.exponent = 0.334;
  in.line_along = metres_per_second(2.976), in.line_across = metres_per_second(-0.2153);
  in.end = SurfaceEnd::ButtAtSurface;
  in.has_bed = false;
  is_within_the_promise(in, 0);
}

TEST(SteadyAccuracyFound, OfTwoDepthsOverABedTheUpperIsTheAnswer) {
  SteadyCase in;
  in.parts = {leader(0.241, 0.44, 1780.0), sinking(3.844, 0.8, 0.1038)};
  in.fly = {newtons(0.0114), metres_per_second(0.4), square_metres(1.36e-4)};
  in.depth = metres(0.2322);
  in.surface_speed = surface_metres_per_second(2.51);
  in.profile.law = Profile::Law::Log;
  in.profile.roughness = metres(0.00714);
  in.end = SurfaceEnd::ButtAtSurface;
  in.has_bed = false;
  ASSERT_LT(plain::end_depth(in, 0.14, kTimes), 0.0);
  ASSERT_GT(plain::end_depth(in, 0.20, kTimes), 0.0);
  ASSERT_LT(plain::end_depth(in, 0.2322, kTimes), 0.0);
  const auto found = steady_shape(in);
  ASSERT_TRUE(found);
  EXPECT_LT(found->fly_depth.si(), 0.20);
  EXPECT_TRUE(answers_too(in, found->fly_depth.si()));
}

}  // namespace
}  // namespace floatwright
