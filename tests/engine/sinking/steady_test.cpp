#include "engine/sinking/steady.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/engine/sinking/line_parts.hpp"

namespace floatwright {
namespace {

// 1 m/s in the mean.
SteadyCase tip_in_a_run() { return tip_in_a_run_of<SteadyCase>(7.0 / 6.0); }

SteadyShape shape(const SteadyCase& in) {
  const auto found = steady_shape(in);
  EXPECT_TRUE(found) << (found ? "" : found.why_absent());
  return found ? *found : SteadyShape{};
}

TEST(SteadyShape, SinksDeeperWithTheRate) {
  SteadyCase in = tip_in_a_run();
  in.has_bed = false;
  Length before;
  for (const double rate : {0.05, 0.1, 0.15, 0.2}) {
    in.parts[1] = sinking(4.27, rate);
    const Length now = shape(in).fly_depth;
    EXPECT_GT(now, before);
    before = now;
  }
}

TEST(SteadyShape, SinksDeeperWithALongerTipAndInSlowerWater) {
  SteadyCase in = tip_in_a_run();
  const Length usual = shape(in).fly_depth;
  in.parts[1] = sinking(5.5, 0.1524);
  EXPECT_GT(shape(in).fly_depth, usual);
  in = tip_in_a_run();
  in.surface_speed = surface_metres_per_second(0.9);
  EXPECT_GT(shape(in).fly_depth, usual);
}

TEST(SteadyShape, ABodyPulledUnderIsDeeperThanAButtHeldAtTheSurface) {
  for (const double speed : {0.3, 0.6, 1.0, 1.5}) {
    SteadyCase in = tip_in_a_run();
    in.has_bed = false;
    in.surface_speed = surface_metres_per_second(speed);
    const SteadyShape pulled = shape(in);
    in.end = SurfaceEnd::ButtAtSurface;
    const SteadyShape held = shape(in);
    EXPECT_GT(pulled.fly_depth, held.fly_depth) << speed;
    EXPECT_GT(pulled.butt_depth, Length{});
    EXPECT_NEAR(held.butt_depth.si(), 0.0, 1e-4);
  }
}

TEST(SteadyShape, EndsAreWhereItSaysAndItsLengthIsTheLines) {
  const SteadyShape found = shape(tip_in_a_run());
  EXPECT_EQ(found.points.front().along, Length{});
  EXPECT_NEAR(found.points.front().depth.si(), 0.0, 1e-3);
  EXPECT_NEAR(found.points.back().depth.si(), found.fly_depth.si(), 1e-9);
  double length = 0.0;
  for (std::size_t i = 1; i < found.points.size(); ++i) {
    length += std::hypot((found.points[i].along - found.points[i - 1].along).si(),
                         (found.points[i].depth - found.points[i - 1].depth).si());
  }
  EXPECT_GT(length, 1.2 + 4.27);
  EXPECT_LT(length, 1.2 + 4.27 + 20.0);
}

TEST(SteadyShape, ALineTooHeavyForTheWaterIsOnTheBedAndNoDeeper) {
  SteadyCase in = tip_in_a_run();
  in.surface_speed = surface_metres_per_second(0.2);
  const SteadyShape found = shape(in);
  EXPECT_TRUE(found.on_the_bed);
  EXPECT_LE(found.fly_depth, in.depth);
  for (const auto& point : found.points) EXPECT_LE(point.depth, in.depth);
  in.has_bed = false;
  EXPECT_FALSE(shape(in).on_the_bed);
  EXPECT_GT(shape(in).fly_depth, in.depth);
}

TEST(SteadyShape, InStillWaterHangsStraightDown) {
  SteadyCase in = tip_in_a_run();
  in.has_bed = false;
  in.surface_speed = SurfaceSpeed{};
  in.end = SurfaceEnd::ButtAtSurface;
  EXPECT_NEAR(shape(in).fly_depth.si(), 1.2 + 4.27, 0.01);
}

TEST(SteadyShape, FromABoatThatGoesWithTheStreamSinksAsInStillWater) {
  SteadyCase in = tip_in_a_run();
  in.has_bed = false;
  in.profile.law = Profile::Law::Uniform;
  in.line_along = metres_per_second(in_metres_per_second(in.surface_speed));
  in.end = SurfaceEnd::ButtAtSurface;
  EXPECT_NEAR(shape(in).fly_depth.si(), 1.2 + 4.27, 0.01);
}

TEST(SteadyShape, DoesNotCareWhichWayAnEvenStreamRunsPastIt) {
  SteadyCase in = tip_in_a_run();
  in.profile.law = Profile::Law::Uniform;
  in.surface_speed = surface_metres_per_second(0.8);
  const Length down = shape(in).fly_depth;
  in.line_along = metres_per_second(1.6);
  EXPECT_NEAR(shape(in).fly_depth.si(), down.si(), 1e-4);
  in.line_along = metres_per_second(0.8), in.line_across = metres_per_second(0.8);
  EXPECT_NEAR(shape(in).fly_depth.si(), down.si(), 1e-4);
}

TEST(SteadyShape, AFlyThatFloatsLiesOnTheSurfaceOrLiftsItsLine) {
  SteadyCase in = tip_in_a_run();
  in.has_bed = false;
  const Length sunk = shape(in).fly_depth;
  in.fly.weight_in_water = newtons(-0.002);
  const Length lifted = shape(in).fly_depth;
  EXPECT_GE(lifted, Length{});
  EXPECT_LT(lifted, sunk);
  in.fly.weight_in_water = newtons(-1.0);
  EXPECT_EQ(shape(in).fly_depth, Length{});
}

TEST(SteadyShape, WithoutAnAnswerSaysWhy) {
  SteadyCase in = tip_in_a_run();
  in.parts[1].length = Length{};
  EXPECT_EQ(steady_shape(in).why_absent(), "a part of the line has no length");
  in = tip_in_a_run();
  in.parts = {floating(20.0)};
  in.fly.weight_in_water = newtons(-0.001);
  EXPECT_EQ(steady_shape(in).why_absent(), "a line lighter than water all along floats: it has no depth");
  in = tip_in_a_run();
  in.depth = Length{};
  EXPECT_EQ(steady_shape(in).why_absent(), "the water has no depth");
}

TEST(SteadyShape, HasAFiniteAnswerOrAReasonInAThousandUnlikelyCases) {
  std::mt19937 engine(20240117);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  };
  for (int i = 0; i < 1000; ++i) {
    SteadyCase in;
    in.parts = {leader(between(0.1, 4.0)), sinking(between(0.2, 9.0), between(0.005, 0.3)),
                floating(between(0.5, 25.0))};
    if (i % 7 == 0) in.parts.erase(in.parts.begin() + 1);
    if (i % 11 == 0) in.parts.pop_back();
    in.parts[0].density = kilograms_per_cubic_metre(between(900.0, 1800.0));
    in.fly = {newtons(between(-0.002, 0.01)), metres_per_second(0.1), square_metres(between(0.0, 1e-3))};
    in.depth = metres(between(0.2, 10.0));
    in.surface_speed = surface_metres_per_second(i % 5 == 0 ? 0.0 : between(0.0, 3.0));
    in.line_along = metres_per_second(between(-1.0, 3.0)), in.line_across = metres_per_second(between(-1.0, 1.0));
    in.has_bed = i % 2 == 0;
    in.end = i % 3 == 0 ? SurfaceEnd::ButtAtSurface : SurfaceEnd::BodyPulledUnder;
    const auto found = steady_shape(in);
    if (!found) {
      EXPECT_FALSE(found.why_absent().empty()) << i;
      continue;
    }
    EXPECT_TRUE(
        std::isfinite(found->fly_depth.si() + found->tip_depth.si() + found->tension.si() + found->at_surface.si()))
        << i;
    EXPECT_GE(found->fly_depth, Length{}) << i;
  }
}

}  // namespace
}  // namespace floatwright
