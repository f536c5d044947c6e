// H. E. Jobson 1996, Prediction of travel time and longitudinal dispersion in rivers and streams, USGS Water-Resources
// Investigations Report 96-4013: equations 12 (velocity of a dye's peak where the slope is known), 13 (the maximum
// probable, above 99 % of all measured) and 18 (leading edge at 0.89 of the peak's time), as carried in public sources
// of the Survey. How far such equations are off on other rivers: 0.505 ft/s, the root mean square for West Virginia in
// USGS SIR 2013-5182. Dye goes with the water through pools and all, so it is the outside measure of how fast water
// goes where nobody described the river.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/temperature/water_path.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

struct Basin {
  double area_km2, flow, mean_annual;  // m3/s
  double slope = 0.002;
};

struct Dye {
  double peak, maximum;  // m/s
};
Dye dye(const Basin& b) {
  const double area = 1e6 * b.area_km2;                                          // m2
  const double area_ratio = std::pow(area, 1.25) * std::sqrt(9.8) / b.mean_annual;  // eq 10
  const double product = std::pow(area_ratio, 0.919) * std::pow(b.flow / b.mean_annual, -0.469) *
                         std::pow(b.slope, 0.159) * b.flow / area;
  return {0.094 + 0.0143 * product, 0.25 + 0.02 * product};
}

// 30 km of river between two gauges of that area, nobody having described it.
double water_hours(const Basin& basin) {
  River river;
  for (const double km : {30.0, 0.0}) {
    GaugeSite gauge;
    gauge.id = km > 0.0 ? "upper" : "lower";
    gauge.place = river_kilometre(km);
    gauge.drainage_area = square_kilometres(basin.area_km2);
    river.gauges.push_back(gauge);
  }
  const RiverGraph graph = river_graph(river);
  RiverFlows flows;
  const std::vector<Discharge> steady(2, cubic_metres_per_second(basin.flow));
  for (std::size_t r = 0; r < graph.reaches.size(); ++r) {
    flows.flow.middle.push_back(steady);
    flows.known.push_back(true);
  }
  const std::vector<GaugeRecord> none(2);
  const auto path = water_path({river, graph, flows, none, {false, false}}, river_kilometre(30.0), river_kilometre(0.0));
  EXPECT_TRUE(path.has_value());
  Duration travel;
  for (const PathPiece& piece : path->pieces) travel = travel + piece.travel;
  return in_hours(travel);
}
double water_speed(const Basin& basin) { return 30000.0 / (3600.0 * water_hours(basin)); }

const Basin kThousand{1000.0, 10.0, 15.0};

TEST(Jobson1996, EquationsAsWorkedOutForOneBasin) {  // by their formulas, not published
  EXPECT_NEAR(dye(kThousand).peak, 0.42680, 1e-4);
  EXPECT_NEAR(dye(kThousand).maximum, 0.71545, 1e-4);
}

// Basins of 200 to 5,000 km2 that yield 15 l/s a km2, at a third of their mean annual flow to twice it.
TEST(Jobson1996, WaterNobodyDescribedGoesAsDyeDoes) {
  for (const double area : {200.0, 1000.0, 5000.0})
    for (const double share : {0.33, 0.67, 1.0, 2.0}) {
      const Basin basin{area, share * 0.015 * area, 0.015 * area};
      EXPECT_LT(water_speed(basin), dye(basin).maximum) << area << " km2, " << share;
      EXPECT_NEAR(water_speed(basin), dye(basin).peak, 0.3048 * 0.505) << area << " km2, " << share;
    }
}

// A parcel is followed at half and at twice its time; the fastest and the expected dye of equation 18 lie within.
TEST(Jobson1996, LeadingEdgesOfDyeLieBetweenHalfAndTwiceTheTimeOfAParcel) {
  const double expected = 0.89 * 30.0 / 3.6 / dye(kThousand).peak, fastest = 0.89 * 30.0 / 3.6 / dye(kThousand).maximum;
  EXPECT_NEAR(expected, 17.378, 0.01);
  EXPECT_NEAR(fastest, 10.366, 0.01);
  EXPECT_LT(0.5 * water_hours(kThousand), fastest);
  EXPECT_GT(2.0 * water_hours(kThousand), expected);
}

}  // namespace
}  // namespace floatwright
