// A pendulum: the test of a public mooring code hangs a heavy weight 100.4988 m under a pivot on a line without drag
// and expects T = 2 pi sqrt(L/g) = 20.114 s (g 9.80665 m/s2). Here it hangs on 2.5 m, whose period is sqrt(2.5/100.4988) of
// that. A cast begins level, a quarter turn up: there the period is 2 K(sin 45 deg)/pi = 1.18034 times that of a small
// swing (complete elliptic integral K = 1.854075; Abramowitz & Stegun 1964, table 17.1, from memory).
#include <gtest/gtest.h>

#include <cmath>

#include "engine/sinking/simulated_cast.hpp"

namespace floatwright {
namespace {

// Time at which the fly is lowest between two rows, by a parabola through three.
double lowest(const SimulatedCast& cast, std::size_t from, std::size_t to) {
  std::size_t at = from;
  for (std::size_t i = from; i < to; ++i)
    if (cast.rows[i].fly_depth > cast.rows[at].fly_depth) at = i;
  const auto depth = [&](std::size_t i) { return cast.rows[i].fly_depth.si(); };
  const double a = depth(at - 1), b = depth(at), c = depth(at + 1);
  return cast.rows[at].t.si() + 0.1 * 0.5 * (a - c) / (a - 2.0 * b + c);
}

// 15 t at the end of a line that weighs as much as the water it displaces: the water's drag is as nothing to it.
TEST(Pendulum, SwingsInItsPeriod) {
  CastCase in;
  in.parts = {{PartKind::Sinking, metres(0.2), millimetres(10.0), kilograms_per_cubic_metre(1e9), {}, {}},
              {PartKind::Floating, metres(2.4), millimetres(0.1), kilograms_per_cubic_metre(1000.0), {}, {}}};
  in.depth = metres(5.0);
  in.bearing = Angle{};
  in.slack = 0.0;
  in.line_out = metres(2.4);
  in.has_bed = false;
  Resolution shorter_steps = kFine;  // a pull this strong is for steps far shorter than a cast needs
  shorter_steps.step = seconds(0.001);
  const auto cast = simulated_cast(in, seconds(4.0), shorter_steps);
  ASSERT_TRUE(cast) << cast.why_absent();
  const double period = 20.114 * std::sqrt(2.5 / 100.4988) * 1.18034;  // s
  EXPECT_NEAR(lowest(*cast, 5, 15), period / 4.0, 0.005 * period);
  EXPECT_NEAR(lowest(*cast, 24, 33), 3.0 * period / 4.0, 0.005 * period);
}

}  // namespace
}  // namespace floatwright
