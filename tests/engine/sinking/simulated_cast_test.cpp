// What must hold of any simulated cast, whatever the numbers: rest, symmetry, energy. That loose line sinks at its own
// rate and what is refused stands in chain_test.cpp.
#include "engine/sinking/simulated_cast.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/sinking/cast_run.hpp"
#include "tests/engine/sinking/line_parts.hpp"

namespace floatwright {
namespace {

CastCase tip_in_a_run() {
  auto in = tip_in_a_run_of<CastCase>(1.1);
  in.line_out = metres(7.0);
  in.has_bed = false;
  return in;
}

SimulatedCast simulated(const CastCase& in, double until) {
  const auto cast = simulated_cast(in, seconds(until));
  EXPECT_TRUE(cast) << cast.why_absent();
  return cast ? *cast : SimulatedCast{};
}

// Straight downstream of the rod it comes to rest in the steady shape: 0.5 % of the fly's depth.
TEST(SimulatedCast, ComesToRestInTheSteadyShape) {
  for (const double speed : {0.6, 0.9, 1.3}) {
    CastCase in = tip_in_a_run();
    in.surface_speed = surface_metres_per_second(speed);
    in.bearing = Angle{};
    in.slack = 0.0;
    in.line_out = metres(18.0);
    SteadyCase steady;
    steady.parts = in.parts;
    steady.fly = in.fly;
    steady.depth = in.depth;
    steady.surface_speed = in.surface_speed;
    steady.has_bed = false;
    const double there = steady_shape(steady)->fly_depth.si();
    EXPECT_NEAR(simulated(in, 60.0).end_fly.si(), there, 0.005 * there) << speed;
  }
}

// Water and rod given the same speed more: the depth of the fly does not change.
TEST(SimulatedCast, IsTheSameFromAMovingBank) {
  CastCase in = tip_in_a_run();
  in.profile.law = Profile::Law::Uniform;
  in.feed = seconds(2.0);
  const SimulatedCast still = simulated(in, 20.0);
  in.surface_speed = surface_metres_per_second(1.1 + 0.7);
  in.boat = metres_per_second(0.7);
  const SimulatedCast moving = simulated(in, 20.0);
  for (std::size_t i = 0; i < still.rows.size(); ++i)
    EXPECT_NEAR(moving.rows[i].fly_depth.si(), still.rows[i].fly_depth.si(), 1e-6);
}

// In still water a boat the other way draws a cast laid the other way along the mirrored path: within 1 mm, for in a
// line that lies straight and still rounding decides which pieces pull first.
TEST(SimulatedCast, IsMirroredWithTheBoat) {
  CastCase in = tip_in_a_run();
  in.surface_speed = {};
  in.slack = 0.0;
  in.boat = metres_per_second(0.5);
  in.bearing = degrees(120.0);
  const SimulatedCast down = simulated(in, 20.0);
  in.boat = metres_per_second(-0.5);
  in.bearing = degrees(60.0);
  const SimulatedCast up = simulated(in, 20.0);
  for (std::size_t i = 0; i < down.rows.size(); ++i) {
    EXPECT_NEAR(up.rows[i].fly_depth.si(), down.rows[i].fly_depth.si(), 1e-3);
    EXPECT_NEAR(in_degrees(up.rows[i].bearing), 180.0 - in_degrees(down.rows[i].bearing), 0.05);
  }
}

// J: of motion, the water moved with the line included, and of height in the water.
double energy(const Chain<Alone>& chain) { return of_lane(chain.energy(), 0); }

TEST(SimulatedCast, NeverGainsEnergyInStillWater) {
  CastCase in = tip_in_a_run();
  in.fly = {};
  in.surface_speed = {};
  const auto water = tabled_water(in.depth, in.surface_speed, in.profile, in.temperature);
  const WaterAndBoat place{&*water, in.boat};
  CastRun<Alone> run(in, {&place, 1}, kFine);
  double before = energy(run.chain());
  const double scale = 0.01 * 0.1524;  // J, what a step's sinking is worth, at most
  while (run.time() < 20.0) {
    run.advance();
    const double now = energy(run.chain());
    EXPECT_LE(now, before + 1e-6 * scale) << run.time();
    before = now;
  }
}

}  // namespace
}  // namespace floatwright
