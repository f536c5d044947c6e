#include "engine/sinking/surface_hold.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

const DriftLimits kLimits;

TabledWater water(double depth, double surface, Profile profile = {}) {
  return *tabled_water(metres(depth), surface_metres_per_second(surface), profile, celsius(10.0));
}
CastSetting from_anchor(const TabledWater& in) { return {in, Speed{}, metres(12), feet(9), kLimits, {}}; }

// A straight line from the surface to the fly, the rest on top.
LineShape straight(double under, double depth) {
  const double away = std::sqrt(under * under - depth * depth);
  return {{{metres(0), metres(0)}, {metres(0.5 * away), metres(0.5 * depth)}, {metres(away), metres(depth)}},
          metres(12 - under)};
}

double share(std::size_t line, const TabledWater& in, const LineShape& shape) {
  const Tackle tackle = rack::tackle();
  const auto found = surface_hold(tackle, {line, {}, rack::kWeighted, {}}, Method::Swing, from_anchor(in), shape);
  EXPECT_TRUE(found) << (found ? "" : found.why_absent());
  return found ? *found : -1.0;
}

// In a uniform stream every piece of one thickness pulls alike, so that the share is one of length: a full sinking line
// of 12 m straight down to 2 m in water of 2 m has a fifth of it in the upper fifth.
TEST(SurfaceHold, IsAShareOfLengthInAUniformStream) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kFull].leader = metres(0.001);
  const TabledWater uniform = water(2.0, 1.0, {Profile::Law::Uniform, {}, {}});
  const auto found = surface_hold(tackle, {rack::kFull, {}, rack::kWeighted, {}}, Method::Swing, from_anchor(uniform),
                                  straight(12.0, 2.0));
  ASSERT_TRUE(found);
  EXPECT_NEAR(*found, 0.2, 0.01) << "pieces of 0.1 m";
}

TEST(SurfaceHold, IsWholeWhereTheLineLiesOnTheSurface) {
  EXPECT_DOUBLE_EQ(share(rack::kTip5, water(2.0, 1.0), straight(6.0, 0.0)), 1.0);
}

TEST(SurfaceHold, IsMoreInAStreamThatSlowsWithDepth) {
  const LineShape shape = straight(6.0, 1.5);
  EXPECT_GT(share(rack::kTip5, water(2.0, 1.0, {Profile::Law::Power, 1.0 / 3.0, {}}), shape),
            share(rack::kTip5, water(2.0, 1.0, {Profile::Law::Uniform, {}, {}}), shape));
}

TEST(SurfaceHold, IsUnknownInWaterThatStands) {
  const Tackle tackle = rack::tackle();
  const TabledWater still = water(2.0, 0.0);
  EXPECT_FALSE(surface_hold(tackle, {rack::kTip5, {}, rack::kWeighted, {}}, Method::Swing, from_anchor(still),
                            straight(6.0, 1.0)));
}

}  // namespace
}  // namespace floatwright
