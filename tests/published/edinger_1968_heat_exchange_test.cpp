// Linear heat exchange, dT/dt = k (Te - T), k = K/(rho c h), with an equilibrium Te = m + A sin(wt): Edinger,
// Duttweiler & Geyer, "The response of water temperatures to meteorological conditions", Water Resour. Res. 4:1137,
// 1968 (the form from memory). Its closed form for K = 30 W/m2/K, h = 0.5 m, rho c = 4.186e6 J/m3/K: k = 1.43335e-5
// 1/s, amplitude ratio k/sqrt(k^2+w^2) = 0.19338, lag atan(w/k)/w = 5.2566 h.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "engine/temperature/heat_parcel.hpp"

namespace floatwright {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi / 86400.0;  // rad/s
const Instant kDay0 = std::chrono::sys_days{std::chrono::year{2027} / 7 / 1};
const Equilibrium kSwing{celsius(15.0), kelvins(0.0), kelvins(8.0)};  // 15 + 8 sin(wt)

double settled(double hours_into_the_day) {  // after 30 days, from far off
  const ParcelShares parcel = after({}, kDay0, hours(30 * 24 + hours_into_the_day), heat_time(metres(0.5)));
  return in_celsius(temperature_of(parcel, celsius(40.0), kSwing));
}

TEST(Edinger1968, GivesTheRate) { EXPECT_NEAR(1.0 / in_seconds(heat_time(metres(0.5))), 1.43335e-5, 5e-11); }
TEST(Edinger1968, DampsAndDelaysTheSwing) {
  for (const double h : {0.0, 3.0, 11.2566, 19.0})
    EXPECT_NEAR(settled(h), 15.0 + 8.0 * 0.19338 * std::sin(kTurn * 3600.0 * (h - 5.2566)), 2e-4) << h;
}
TEST(Edinger1968, DecaysTowardsARestingEquilibrium) {
  const ParcelShares parcel = after({}, kDay0, seconds(1.0 / 1.43335e-5), heat_time(metres(0.5)));
  const Temperature t = temperature_of(parcel, celsius(25.0), {celsius(15.0), {}, {}});
  EXPECT_NEAR(in_celsius(t), 15.0 + 10.0 / std::numbers::e, 1e-4);
}

}  // namespace
}  // namespace floatwright
