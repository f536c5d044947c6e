// A flexible cable in a uniform stream: Pode, David Taylor Model Basin Report 687 (1951). The critical angle and the
// cable functions are computed from Pode's definitions (fourth-order steps, 20,000 of them), not read from the printed
// tables; a weightless cable under a weight has the closed form of a catenary on its side.
// The drag law of those papers is Cn constant with angle and Reynolds number; here it is Cheng's with Re, held beyond
// its range of 2e5: a cable thick and fast enough lies beyond it all along, and its Cd is constant. Drag along the
// cable is Pode's constant F per length, here it falls with the square of the speed along the cable: only rows without
// it can be held to, and the identity T = T0 + W z + F s likewise without F s.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/sinking/section.hpp"
#include "engine/sinking/steady.hpp"

namespace floatwright {
namespace {

constexpr double kDiameter = 1.0, kSpeed = 4.0;  // m, m/s: Re over 2e5 from 4 degrees to the stream upward
constexpr double kSolver = 0.002;

struct Towed {
  SteadyCase in;
  double load;  // R, N/m, line square to the stream
};

// One cable of weight w R per length under a fly of weight T0 without drag, and no drag along it.
Towed cable(double w, double t0_over_r, double sigma) {
  const WaterProperties water = water_at(celsius(10.0));
  const double load = NormalDrag(metres(kDiameter), water).at(metres_per_second(kSpeed)).si();
  const double area = std::numbers::pi * kDiameter * kDiameter / 4.0;
  LinePart part{PartKind::Sinking, metres(sigma * t0_over_r), metres(kDiameter), {}, {}, {}};
  part.density = kilograms_per_cubic_metre(water.density.si() + w * load / (kStandardGravity * area));
  SteadyCase in;
  in.parts = {part};
  in.fly = {newtons(t0_over_r * load), metres_per_second(1.0), Area{}};
  in.depth = metres(1000.0);
  in.surface_speed = surface_metres_per_second(kSpeed);
  in.profile.law = Profile::Law::Uniform;
  in.tangential_drag = 0.0;
  in.end = SurfaceEnd::ButtAtSurface;
  return {in, load};
}

TEST(Pode1951, CriticalAngleOfALongStraightLine) {
  // w = W/R and the angle in degrees.
  const std::pair<double, double> rows[] = {{0.01, 5.7248}, {0.02, 8.0893}, {0.05, 12.7578}, {0.1, 17.9642},
                                            {0.2, 25.1784}, {0.5, 38.6683}, {1, 51.8273},    {2, 65.5302}};
  for (const auto& [w, angle] : rows) {
    const auto shape = steady_shape(cable(w, 1.0, 400.0).in);
    ASSERT_TRUE(shape);
    EXPECT_NEAR(in_degrees(shape->at_surface), angle, kSolver * angle) << "W/R " << w;
  }
}

TEST(Pode1951, WeightlessLineUnderAWeightIsACatenaryOnItsSide) {
  // T = 1 N, R = 0.6 N/m; s = 1, 2, 5 m: depth, lay-back, angle at the top.
  struct Row {
    double s, depth, back, angle;
  };
  for (const Row& row :
       {Row{1, 0.94804, 0.27698, 59.0362}, Row{2, 1.69329, 0.93675, 39.8056}, Row{5, 3.03074, 3.60380, 18.4349}}) {
    const auto shape = steady_shape(cable(0.0, 1.0 / 0.6, row.s * 0.6).in);
    ASSERT_TRUE(shape);
    EXPECT_NEAR(shape->fly_depth.si(), row.depth, kSolver * row.depth);
    EXPECT_NEAR(shape->points.back().along.si(), row.back, kSolver * row.back);
    EXPECT_NEAR(in_degrees(shape->at_surface), row.angle, kSolver * row.angle);
  }
}

TEST(Pode1951, CableFunctionsFromAHangingWeight) {
  // The critical angle's w, the second angle and the functions there, without drag along the cable.
  struct Row {
    double w, angle, tau, sigma, xi, eta;
  };
  for (const Row& row :
       {Row{0.030619, 60, 1.01712, 0.58803, 0.15849, 0.55921}, Row{0.030619, 15, 1.07333, 4.74194, 3.79144, 2.39482},
        Row{0.124485, 60, 1.07370, 0.62344, 0.17115, 0.59201}, Row{0.288675, 60, 1.19056, 0.69718, 0.19806, 0.66013},
        Row{0.288675, 35, 1.63760, 2.97871, 1.85146, 2.20870}, Row{0.707107, 50, 2.51935, 2.50247, 1.20063, 2.14868}}) {
    const Towed towed = cable(row.w, 1.0, row.sigma);
    const auto shape = steady_shape(towed.in);
    ASSERT_TRUE(shape);
    EXPECT_NEAR(shape->tension.si() / towed.load, row.tau, kSolver * row.tau);
    EXPECT_NEAR(shape->points.back().along.si(), row.xi, kSolver * row.xi);
    EXPECT_NEAR(shape->fly_depth.si(), row.eta, kSolver * row.eta);
    EXPECT_NEAR(in_degrees(shape->at_surface), row.angle, kSolver * row.angle);
  }
}

// T = T0 + W z without drag along the line, whatever the drag across it: an identity, to the solver's own 0.05 %.
TEST(Pode1951, TensionGainsTheWeightOfTheDepthGained) {
  SteadyCase in;
  LinePart part{PartKind::Sinking, metres(4.0), millimetres(1.0), kilograms_per_cubic_metre(1800.0), {}, {}};
  in.parts = {part};
  in.fly = {newtons(0.004), metres_per_second(0.1), square_metres(1e-4)};
  in.depth = metres(3.0);
  in.surface_speed = surface_metres_per_second(0.6);
  in.profile.law = Profile::Law::Uniform;
  in.tangential_drag = 0.0;
  in.end = SurfaceEnd::ButtAtSurface;
  const auto shape = steady_shape(in);
  ASSERT_TRUE(shape);
  const WaterProperties water = water_at(in.temperature);
  const double t0 = std::hypot(0.004, 0.5 * water.density.si() * 1e-4 * 0.36);
  const double weight = weight_for_density(part.density, part.diameter, water).si();
  EXPECT_NEAR(shape->tension.si(), t0 + weight * shape->fly_depth.si(), 5e-4 * t0);
}

// Free sinking, W = 1/2 rho Cd d Vs^2 with Cheng's Cd, 10 C; computed, 4 figures.
TEST(FreeSinking, RatesOfLevelLinesByDiameterAndDensity) {
  struct Row {
    double millimetres, density, rate;
  };
  for (const Row& row : {Row{1.0, 1150, 0.03527}, Row{1.0, 1300, 0.05337}, Row{1.2, 1500, 0.08131},
                         Row{0.25, 1140, 0.00769}, Row{0.25, 1780, 0.02702}}) {
    const auto rate =
        sink_rate(kilograms_per_cubic_metre(row.density), millimetres(row.millimetres), water_at(celsius(10.0)));
    ASSERT_TRUE(rate);
    EXPECT_NEAR(rate->si(), row.rate, 0.001 * row.rate + 5e-6);
  }
}

// sin^2/cos = (Vs/U)^2 for a fine line of still-water rate Vs: within 0.7 %, since the line meets the water square at
// nearly its own sink rate and the drag coefficient cancels.
TEST(Pode1951, CriticalAngleFromTheSinkRateAlone) {
  for (const double u : {0.3, 0.6, 1.0}) {
    const double vs = 0.127;
    SteadyCase in;
    in.parts = {{PartKind::Sinking, metres(40.0), millimetres(1.0), {}, metres_per_second(vs), metres_per_second(vs)}};
    in.fly = {newtons(1e-4), metres_per_second(0.1), Area{}};
    in.depth = metres(100.0);
    in.surface_speed = surface_metres_per_second(u);
    in.profile.law = Profile::Law::Uniform;
    in.end = SurfaceEnd::ButtAtSurface;
    const auto shape = steady_shape(in);
    ASSERT_TRUE(shape);
    const double k = (vs / u) * (vs / u);
    const double angle = std::acos(0.5 * (-k + std::sqrt(k * k + 4.0)));
    EXPECT_NEAR(in_radians(shape->at_surface), angle, 0.007 * angle) << u << " m/s";
  }
}

}  // namespace
}  // namespace floatwright
