// Density: Tanaka et al. 2001 (CIPM). Viscosity: IAPWS SR6-08 at 0.1 MPa (formula from memory); IAPWS 2008 release,
// check value 0.890022551e-3 Pa s at 298.15 K. The table's rounded values agree with the CRC handbook (from memory).
#include <gtest/gtest.h>

#include "engine/sinking/water_properties.hpp"

namespace floatwright {
namespace {

struct Row {
  double celsius, density, viscosity;  // C, kg/m3, mPa s
};

TEST(Tanaka2001, DensityFromFreezingToThirtyDegrees) {
  const Row rows[] = {{0, 999.8428, 0},  {4, 999.9749, 0},  {5, 999.9668, 0},  {10, 999.7027, 0},
                      {15, 999.1026, 0}, {20, 998.2067, 0}, {25, 997.0470, 0}, {30, 995.6488, 0}};
  for (const Row& row : rows)
    EXPECT_NEAR(water_density(celsius(row.celsius)).si(), row.density, 1e-4) << row.celsius << " C";
}

TEST(IapwsSr6, ViscosityFromFreezingToThirtyDegrees) {
  const Row rows[] = {{0, 0, 1.79178},  {4, 0, 1.56732},  {5, 0, 1.51820},  {10, 0, 1.30590},
                      {15, 0, 1.13755}, {20, 0, 1.00157}, {25, 0, 0.89000}, {30, 0, 0.79721}};
  for (const Row& row : rows)
    EXPECT_NEAR(water_viscosity(celsius(row.celsius)).si() * 1e3, row.viscosity, 1e-5) << row.celsius << " C";
}

// 0.003 %: the difference between the short formula and the full release.
TEST(Iapws2008, CheckValueAtTwentyFiveDegrees) {
  EXPECT_NEAR(water_viscosity(celsius(25.0)).si() / 0.890022551e-3, 1.0, 3e-5);
}

// Kestin, Sokolov & Wakeham 1978 (formula from memory), a correlation of other measurements: 0.1 %.
TEST(Kestin1978, ViscosityOfAnotherCorrelation) {
  const Row rows[] = {{0, 0, 1.79150},  {4, 0, 1.56826},  {5, 0, 1.51925},  {10, 0, 1.30698},
                      {15, 0, 1.13831}, {20, 0, 1.00200}, {25, 0, 0.89020}, {30, 0, 0.79728}};
  for (const Row& row : rows)
    EXPECT_NEAR(water_viscosity(celsius(row.celsius)).si() * 1e3 / row.viscosity, 1.0, 1e-3) << row.celsius << " C";
}

// Kell 1975, another fit (from memory; values computed): 0.004 kg/m3, the two fits' own distance.
TEST(Kell1975, DensityOfAnotherCorrelation) {
  const Row rows[] = {{0, 999.8395, 0},  {4, 999.9720, 0},  {5, 999.9638, 0},  {10, 999.6996, 0},
                      {15, 999.0996, 0}, {20, 998.2041, 0}, {25, 997.0449, 0}, {30, 995.6473, 0}};
  for (const Row& row : rows)
    EXPECT_NEAR(water_density(celsius(row.celsius)).si(), row.density, 0.004) << row.celsius << " C";
}

TEST(WaterProperties, AreHeldAtTheEndsOfTheirRange) {
  EXPECT_EQ(water_density(celsius(-3.0)), water_density(celsius(0.0)));
  EXPECT_EQ(water_viscosity(celsius(60.0)), water_viscosity(celsius(40.0)));
}

}  // namespace
}  // namespace floatwright
