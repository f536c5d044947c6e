// A heavy line in still water hangs in a catenary. Values: the test data of the open mooring package MoorPy
// (tests/test_catenary.py, read; relative tolerance there 1e-5): horizontal span and height between the ends, length,
// weight in water per length, and the forces at the lower end A and the upper end B. The first lies on the bottom for
// 202.81 m: what hangs is the rest. Here the lower end is the fly: the horizontal force is its drag in a stream so slow
// that the line itself feels nothing of it, the vertical one its weight.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/sinking/steady.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {
namespace {

constexpr double kSolver = 0.002;
constexpr double kSpeed = 1e-3, kDiameter = 1e-3;  // m/s, m

struct Hung {
  double span, height, length;  // m
  double weight;                // N/m
  double low_across, low_down;  // N, at A: along the bottom, and the load it takes from the line
  double high_across, high_up;  // N, at B
};

// The same shape by a line of 0.2 N/m.
SteadyCase lightened(const Hung& hung) {
  const double scale = 0.2 / hung.weight, area = std::numbers::pi * kDiameter * kDiameter / 4.0;
  SteadyCase in;
  const double rho = water_density(in.temperature).si();
  LinePart part{PartKind::Sinking, metres(hung.length), metres(kDiameter), {}, {}, {}};
  part.density = kilograms_per_cubic_metre(rho + hung.weight * scale / (kStandardGravity * area));
  in.parts = {part};
  const double drag_area = 2.0 * hung.low_across * scale / (rho * kSpeed * kSpeed);  // m2
  in.fly = {newtons(-hung.low_down * scale), metres_per_second(1.0), square_metres(drag_area)};
  in.depth = metres(2000.0);
  in.surface_speed = surface_metres_per_second(kSpeed);
  in.profile.law = Profile::Law::Uniform;
  in.tangential_drag = 0.0;
  in.end = SurfaceEnd::ButtAtSurface;
  return in;
}

TEST(MooringCatenary, LineInStillWaterHangsAsThePackageSays) {
  for (const Hung& hung :
       {Hung{400 - 202.81030580004602, 200, 500 - 202.81030580004602, 800, 96643.42815934008, 0, 96643.42815934008,
             237751.75535996316},
        Hung{400, 200, 500, 200, 43694.580989249596, 22365.599350216216, 43694.580989249596, 77634.40064978378},
        Hung{89.9, 59.2, 130, 881.05, 31373.229006023103, 26650.341270116318, 31373.229006023103, 87886.15872988368}}) {
    const auto shape = steady_shape(lightened(hung));
    ASSERT_TRUE(shape) << shape.why_absent();
    const double scale = 0.2 / hung.weight, pull = std::hypot(hung.high_across, hung.high_up) * scale;  // -, N
    EXPECT_NEAR(shape->fly_depth.si(), hung.height, kSolver * hung.height);
    EXPECT_NEAR(shape->points.back().along.si(), hung.span, kSolver * hung.span);
    EXPECT_NEAR(shape->tension.si(), pull, kSolver * pull);
    EXPECT_NEAR(std::tan(in_radians(shape->at_surface)), hung.high_up / hung.high_across,
                kSolver * hung.high_up / hung.high_across);
  }
}

}  // namespace
}  // namespace floatwright
