#include <gmock/gmock.h>

#include "engine/river/problem_groups.hpp"

namespace floatwright {
namespace {

Access access(const std::string& id, double mile, double latitude, double longitude) {
  Access made;
  made.id = made.name = id;
  made.place = river_mile(mile);
  made.at = GeoPoint{latitude, longitude};
  return made;
}

// One degree of latitude is about 69.1 miles.
River three_accesses(double middle_mile) {
  River river;
  river.accesses = {access("upper", 40.0, 45.00, -111.0), access("middle", middle_mile, 45.06, -111.0),
                    access("lower", 28.0, 45.12, -111.0)};
  return river;
}

TEST(MapProblems, AreNoneWhereMilesAndMapAgree) { EXPECT_TRUE(map_problems(three_accesses(34.0)).empty()); }

TEST(MapProblems, NameTheAccessThatLiesOffTheRiver) {
  const auto problems = map_problems(three_accesses(234.0));
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].pointer, "/accesses/1");
  EXPECT_THAT(problems[0].found, ::testing::HasSubstr("mile 234.0"));
  EXPECT_THAT(problems[0].found, ::testing::HasSubstr("4.1 mi on the map"));
}

TEST(MapProblems, RefuseARiverShorterThanTheStraightLine) {
  const auto problems = map_problems(three_accesses(39.0));
  ASSERT_EQ(problems.size(), 1u) << "4.1 miles apart on the map, one by the river";
}

TEST(MapProblems, SayNothingOfAccessesWithoutAPlaceOnTheMap) {
  auto river = three_accesses(234.0);
  river.accesses[1].at.reset();
  EXPECT_TRUE(map_problems(river).empty());
}

}  // namespace
}  // namespace floatwright
