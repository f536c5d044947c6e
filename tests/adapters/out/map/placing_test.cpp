// Places between accesses, on rivers drawn so that the answer is known without the code.
#include "adapters/out/map/placing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace floatwright::testing {
namespace {

constexpr double kDegreeOfLatitude = 6371008.8 * std::numbers::pi / 180.0;  // m, on a sphere of the mean radius

Access access(const char* name, double mile, std::optional<GeoPoint> at) {
  Access made;
  made.id = made.name = name;
  made.place = river_mile(mile);
  made.at = at;
  return made;
}

River river_of(std::vector<Access> accesses) {
  River river;
  river.accesses = std::move(accesses);
  return river;
}

TEST(Placing, PartsTheLineAsTheRiverIsParted) {
  const auto known = known_points(river_of({access("top", 40, GeoPoint{46.0, -111.0}), access("low", 30, GeoPoint{45.0, -112.0})}));
  const auto placed = placed_between(known, river_mile(32.5));
  ASSERT_TRUE(placed);
  EXPECT_NEAR(placed->at.latitude_deg, 45.25, 1e-12);
  EXPECT_NEAR(placed->at.longitude_deg, -111.75, 1e-12);
  EXPECT_EQ(placed->from, "top");
  EXPECT_EQ(placed->to, "low");
}

TEST(Placing, TakesTheNearestKnownPointsAndPassesOverAccessesWithoutCoordinates) {
  const auto known = known_points(river_of({access("d", 10, GeoPoint{44.0, -111.0}), access("c", 20, std::nullopt),
                                            access("b", 30, GeoPoint{45.0, -111.0}), access("a", 40, GeoPoint{46.0, -111.0})}));
  const auto placed = placed_between(known, river_mile(20));
  ASSERT_TRUE(placed);
  EXPECT_NEAR(placed->at.latitude_deg, 44.5, 1e-12);
  EXPECT_EQ(placed->from, "b");
  EXPECT_EQ(placed->to, "d");
}

TEST(Placing, GuessesNothingBeyondTheKnownPoints) {
  const auto known = known_points(river_of({access("top", 40, GeoPoint{46.0, -111.0}), access("low", 30, GeoPoint{45.0, -112.0})}));
  EXPECT_FALSE(placed_between(known, river_mile(40.1)));
  EXPECT_FALSE(placed_between(known, river_mile(29.9)));
  EXPECT_FALSE(placed_between({}, river_mile(35)));
  ASSERT_TRUE(placed_between(known, river_mile(40)));
  EXPECT_EQ(placed_between(known, river_mile(40))->at.latitude_deg, 46.0);
  ASSERT_TRUE(placed_between(known, river_mile(30)));
  EXPECT_EQ(placed_between(known, river_mile(30))->at.latitude_deg, 45.0);
}

TEST(Placing, GoesTheShortWayOverThe180thMeridian) {
  const auto known = known_points(river_of({access("top", 40, GeoPoint{65.0, 179.8}), access("low", 30, GeoPoint{65.0, -179.9})}));
  // 0.3 degrees of longitude apart.
  ASSERT_TRUE(placed_between(known, river_mile(33)));
  EXPECT_NEAR(placed_between(known, river_mile(33))->at.longitude_deg, -179.99, 1e-9);
  EXPECT_NEAR(placed_between(known, river_mile(36))->at.longitude_deg, 179.92, 1e-9);
}

TEST(Placing, PassesOverCoordinatesThatAreNone) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE(known_points(river_of({access("a", 40, GeoPoint{nan, -111.0}), access("b", 30, GeoPoint{45.0, 181.0}),
                                     access("c", 20, GeoPoint{-91.0, 10.0})})).empty());
}

// A straight river along a meridian, as long as the map says: the place is certain.
TEST(Placing, IsCertainOnAStraightRiver) {
  EXPECT_NEAR(in_metres(off_by_at_most(metres(300), metres(700), metres(1000))), 0.0, 1e-6);
  const double length = in_miles(metres(kDegreeOfLatitude));
  const auto known = known_points(river_of({access("top", length, GeoPoint{46.0, -111.0}), access("low", 0, GeoPoint{45.0, -111.0})}));
  EXPECT_LT(in_metres(placed_between(known, river_mile(length / 3))->off_by_at_most), 2.0) << "m; rounding of a square root";
}

// Two legs of 5 km with a right-angled corner between: the accesses are 3 and 4 apart in a 3-4-5 triangle. From the
// corner H to the point P that parts the straight line 3:4, by coordinates: A(0,3), B(4,0), H(0,0), P = A + 3/7 (B - A).
TEST(Placing, NeverLiesFartherOffThanItSays) {
  const double px = 4.0 * 3 / 7, py = 3.0 - 3.0 * 3 / 7;
  const double met = 1000.0 * std::hypot(px, py);
  const double said = in_metres(off_by_at_most(metres(3000), metres(4000), metres(5000)));
  EXPECT_NEAR(said, met, 0.01) << "m; both legs straight is the farthest that a river of this length can go";
}

TEST(Placing, SaysHowFarARiverThatComesBackToItsStartCanStray) {
  EXPECT_NEAR(in_metres(off_by_at_most(metres(500), metres(500), metres(0))), 500.0, 1e-9);
  EXPECT_EQ(in_metres(off_by_at_most(metres(0), metres(0), metres(0))), 0.0);
  EXPECT_EQ(in_metres(off_by_at_most(metres(400), metres(500), metres(1000))), 0.0) << "a map that disagrees is no NaN";
}

}  // namespace
}  // namespace floatwright::testing
