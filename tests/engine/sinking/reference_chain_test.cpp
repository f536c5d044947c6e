// The reference chain against what does not depend on it: closed forms, the steady equations, symmetries. What the
// engine's chain is held against must first hold itself.
#include "tests/support/reference_chain.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/sinking/section.hpp"
#include "tests/engine/sinking/line_parts.hpp"

namespace floatwright {
namespace {

CastCase tip_in_a_run() {
  auto in = tip_in_a_run_of<CastCase>(1.1);
  in.line_out = metres(7.0);
  in.feed = seconds(3.0);
  in.has_bed = false;
  return in;
}

ReferenceChoices coarse() {
  ReferenceChoices choices;
  choices.segment = 0.2;
  return choices;
}

// T = 2 pi sqrt(L/g) = 20.114 s for 100.4988 m and 9.80665 m/s2: the pendulum test of a public mooring code, a heavy
// weight on a line without drag, pulled aside by a tenth of its length. Swings as wide as that are 0.06 % slower. Line
// this thin has next to no drag; 0.02 % of the weight hangs along it, which is worth 0.002 %.
TEST(ReferenceChain, SwingsAsAPendulum) {
  CastCase in;
  const Density gram_a_metre = kilograms_per_cubic_metre(1e-3 / 7.854e-37);
  in.parts = {{PartKind::Leader, metres(100.4988), millimetres(1e-15), gram_a_metre, {}, {}}};
  in.fly = {newtons(500.0 * kStandardGravity), {}, {}};
  in.depth = metres(200.0);
  in.line_out = metres(100.4988);
  in.slack = 0.0;
  in.bearing = Angle{};
  ReferenceChoices choices;
  choices.segment = 100.4988 / 8.0;
  choices.fly_weight_share = 1.0;
  choices.wave_speed = 1e5;
  ReferenceChain chain(in, choices);
  for (auto& node : chain.nodes) node.at = {node.at.along * 10.0 / 100.4988, node.at.along * 100.0 / 100.4988, 0.0};
  double before = chain.nodes.front().at.along, crossed[2] = {};
  for (int i = 1, n = 0; n < 2; ++i) {
    chain.advance_to(0.01 * i);
    const double now = chain.nodes.front().at.along;
    if ((now < 0.0) != (before < 0.0)) crossed[n++] = 0.01 * (i - now / (now - before));
    before = now;
    ASSERT_LT(i, 4000);
  }
  EXPECT_NEAR(2.0 * (crossed[1] - crossed[0]), 20.114 * 1.0006, 0.01);
}

// A loose line in still water goes down level at its own rate; the fly at its end weighs next to nothing.
TEST(ReferenceChain, SinksInStillWaterAtTheLinesOwnRate) {
  CastCase in;
  in.parts = {sinking(12.0, 0.1)};
  in.fly = {newtons(1e-9), metres_per_second(0.1), square_metres(5e-11)};
  in.depth = metres(10.0);
  in.line_out = metres(12.0);
  in.slack = 0.3;
  ReferenceChain chain(in, coarse());
  chain.advance_to(2.0);
  const double fly = chain.nodes.front().at.down, line = chain.nodes[30].at.down;
  chain.advance_to(3.0);
  EXPECT_NEAR(chain.nodes.front().at.down - fly, 0.1, 1e-5);
  EXPECT_NEAR(chain.nodes[30].at.down - line, 0.1, 1e-5);
}

// Hung from the rod straight downstream it comes to rest in the steady shape: 0.5 % of the fly's depth.
TEST(ReferenceChain, ComesToRestInTheSteadyShape) {
  CastCase in = tip_in_a_run();
  in.bearing = Angle{};
  in.slack = 0.0;
  in.line_out = metres(15.0);
  SteadyCase steady;
  steady.parts = in.parts;
  steady.fly = in.fly;
  steady.depth = in.depth;
  steady.surface_speed = in.surface_speed;
  steady.has_bed = false;
  ReferenceChain chain(in, coarse());
  chain.advance_to(40.0);
  const double there = steady_shape(steady)->fly_depth.si();
  EXPECT_NEAR(chain.row().fly_depth.si(), there, 0.005 * there);
}

TEST(ReferenceChain, ComesNearerItselfWithEveryHalvingOfTheSegments) {
  double before[3];
  for (const int i : {0, 1, 2}) {
    ReferenceChoices choices;
    choices.segment = 0.4 / (1 << i);
    before[i] = reference_cast(tip_in_a_run(), choices, seconds(12.0)).deepest_fly.si();
  }
  EXPECT_LT(std::abs(before[2] - before[1]), 0.7 * std::abs(before[1] - before[0]));
  EXPECT_LT(std::abs(before[2] - before[1]), 0.01 * before[2]);
}

TEST(ReferenceChain, IsTheSameFromAMovingBank) {
  ReferenceChoices choices = coarse();
  const SimulatedCast still = reference_cast(tip_in_a_run(), choices, seconds(15.0));
  choices.shift = 0.7;
  const SimulatedCast moving = reference_cast(tip_in_a_run(), choices, seconds(15.0));
  for (std::size_t i = 0; i < still.rows.size(); i += 10) {
    EXPECT_NEAR(moving.rows[i].fly_depth.si(), still.rows[i].fly_depth.si(), 1e-4);
    EXPECT_NEAR(in_degrees(moving.rows[i].bearing), in_degrees(still.rows[i].bearing), 0.01);
  }
}

TEST(ReferenceChain, IsMirroredOnTheOtherSideOfTheStream) {
  CastCase in = tip_in_a_run();
  const SimulatedCast left = reference_cast(in, coarse(), seconds(10.0));
  in.bearing = -in.bearing;
  const SimulatedCast right = reference_cast(in, coarse(), seconds(10.0));
  for (std::size_t i = 0; i < left.rows.size(); i += 10) {
    EXPECT_NEAR(right.rows[i].fly_depth.si(), left.rows[i].fly_depth.si(), 1e-6);
    EXPECT_NEAR(right.rows[i].bearing.si(), -left.rows[i].bearing.si(), 1e-6);
  }
}

TEST(ReferenceChain, NeverGainsEnergyInStillWater) {
  CastCase in = tip_in_a_run();
  in.surface_speed = {};
  ReferenceChain chain(in, coarse());
  chain.nodes.front().velocity = {1.0, 0.5, -1.0};
  for (double before = chain.energy(), t = 0.05; t < 10.0; t += 0.05) {
    chain.advance_to(t);
    EXPECT_LE(chain.energy(), before + 1e-9) << t;
    before = chain.energy();
  }
}

}  // namespace
}  // namespace floatwright
