// A table tennis ball on a weightless line without drag, held in a stream: the vignette of a public mooring package.
// R = 0.02 m, L = 0.5 m, rho 1027, g 9.81, CD 1: lift 0.337612 N; at u = 0.5: drag 0.161321 N, 25.5398 degrees from the
// vertical, 0.215569 m along, 0.048857 m lower than straight up, 0.374174 N; at u = 1: 62.3814, 0.443027, 0.268208,
// 0.728267. The case is turned upside down here: a weight of the ball's lift, hung from the surface.
#include <gtest/gtest.h>

#include <numbers>

#include "engine/sinking/steady.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {
namespace {

TEST(TetheredBall, LeansInTheStreamAsItsDragAndLiftSay) {
  struct Row {
    double speed, from_vertical, along, drop, tension;
  };
  for (const Row& row :
       {Row{0.5, 25.5398, 0.215569, 0.048857, 0.374174}, Row{1.0, 62.3814, 0.443027, 0.268208, 0.728267}}) {
    SteadyCase in;
    const double rho = water_density(in.temperature).si();
    // Thinner than can be: drag falls with the fourth root of the diameter only.
    in.parts = {{PartKind::Leader, metres(0.5), millimetres(1e-15), water_density(in.temperature), {}, {}}};
    in.fly = {newtons(0.337612), metres_per_second(1.0), square_metres(std::numbers::pi * 4e-4 * 1027.0 / rho)};
    in.depth = metres(2.0);
    in.surface_speed = surface_metres_per_second(row.speed);
    in.profile.law = Profile::Law::Uniform;
    in.end = SurfaceEnd::ButtAtSurface;
    const auto shape = steady_shape(in);
    ASSERT_TRUE(shape);
    EXPECT_NEAR(90.0 - in_degrees(shape->at_surface), row.from_vertical, 0.01);
    EXPECT_NEAR(shape->points.back().along.si(), row.along, 1e-4);
    EXPECT_NEAR(0.5 - shape->fly_depth.si(), row.drop, 1e-4);
    EXPECT_NEAR(shape->tension.si(), row.tension, 1e-4);
  }
}

}  // namespace
}  // namespace floatwright
