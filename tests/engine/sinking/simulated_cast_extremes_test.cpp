// What is far outside fishing, at random: fast boats, heavy flies, lines of centimetres and of a hundred metres.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "engine/sinking/simulated_cast.hpp"
#include "tests/engine/sinking/line_parts.hpp"

namespace floatwright {
namespace {

// Depths of a cast are numbers within its own length, or a sentence says why there are none.
TEST(SimulatedCast, AnswersOrRefusesWhateverItIsGiven) {
  std::mt19937 dice(11);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(dice()) / 4294967295.0;
  };
  const auto spread = [&](double low, double high) { return low * std::pow(high / low, between(0.0, 1.0)); };
  int answered = 0;
  for (int i = 0; i < 300; ++i) {
    CastCase in;
    in.parts = {leader(spread(0.05, 40.0)), sinking(spread(0.05, 30.0), spread(1e-4, 1.0)),
                floating(spread(0.5, 40.0))};
    if (i % 7 == 0) in.parts.pop_back();
    if (i % 11 == 0) in.parts[0].density = kilograms_per_cubic_metre(spread(100.0, 19300.0));
    in.fly = {newtons(between(-0.01, 0.1)), metres_per_second(between(0.0, 2.0)), square_metres(spread(1e-7, 1e-2))};
    in.depth = metres(spread(0.1, 30.0));
    in.surface_speed = surface_metres_per_second(between(0.0, 4.0));
    in.bearing = degrees(between(0.0, 180.0));
    in.slack = between(0.0, 0.57);
    in.line_out = between(0.0, 1.0) * in.parts.back().length;
    in.boat = metres_per_second(between(-2.0, 4.0));
    in.feed = seconds(between(0.0, 20.0));
    in.strip = metres_per_second(i % 3 == 0 ? between(0.0, 2.0) : 0.0);
    in.least_out = metres(between(0.0, 5.0));
    in.has_bed = i % 2 == 0;
    const auto cast = simulated_cast(in, seconds(15.0), i % 5 == 0 ? kFine : kCoarse);
    if (!cast) {
      EXPECT_FALSE(cast.why_absent().empty());
      continue;
    }
    ++answered;
    double length = 0.0;
    for (const LinePart& part : in.parts) length += part.length.si();
    for (const CastRow& row : cast->rows) {
      for (const double depth : {row.fly_depth.si(), row.tip_depth.si()}) {
        ASSERT_TRUE(std::isfinite(depth)) << i;
        ASSERT_LT(std::abs(depth), 1.1 * length) << i;
      }
      ASSERT_TRUE(std::isfinite(row.bearing.si()) && std::isfinite(row.over_ground.si())) << i;
      ASSERT_TRUE(std::isfinite(row.through_water.si())) << i;
    }
  }
  EXPECT_GT(answered, 250);
}

}  // namespace
}  // namespace floatwright
