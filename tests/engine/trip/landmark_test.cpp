#include "engine/trip/landmark.hpp"

#include <gtest/gtest.h>

#include "engine/trip/passages.hpp"
#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

Access access(const std::string& name, double mile) {
  Access made;
  made.name = name;
  made.place = river_mile(mile);
  return made;
}

River two_accesses() {
  River river;
  river.accesses = {access("Old Ferry", 28.6), access("Alder Bar", 34.4)};
  return river;
}

TEST(Landmark, IsTheNearestAtOrAboveThePlace) {
  const River river = two_accesses();
  EXPECT_EQ(landmark_above(river, river_mile(34.4)), "Alder Bar");
  EXPECT_EQ(landmark_above(river, river_mile(28.7)), "Alder Bar");
  EXPECT_EQ(landmark_above(river, river_mile(27.0)), "Old Ferry");
  EXPECT_EQ(landmark_above(river, river_mile(40.0)), "");
}

TEST(Landmark, IsTheLowerEndOfANamedReachWhereThatIsNearer) {
  River river = two_accesses();
  NamedReach bend;
  bend.name = "Quarry bend";
  bend.from = river_mile(27.8);
  bend.to = river_mile(25.1);
  river.reaches = {bend};
  EXPECT_EQ(landmark_above(river, river_mile(25.1)), "Quarry bend");
  EXPECT_EQ(landmark_above(river, river_mile(28.6)), "Old Ferry");
  river.reaches[0].in_side_channel = "back_channel";
  EXPECT_EQ(landmark_above(river, river_mile(25.1)), "Old Ferry");
}

TEST(Landmark, IsTheAccessOfTwoAtOnePlace) {
  River river = two_accesses();
  Hazard ledge;
  ledge.what = "A ledge";
  ledge.place = river_mile(28.6);
  ledge.must_portage = true;
  river.hazards = {ledge};
  EXPECT_EQ(landmark_above(river, river_mile(28.6)), "Old Ferry");
  river.accesses.erase(river.accesses.begin());
  EXPECT_EQ(landmark_above(river, river_mile(28.6)), "A ledge");
}

TEST(Passages, OfWaterThatNobodyNamedAreCalledByWhatLiesAbove) {
  HandMadeDay made;
  made.river.reaches.clear();
  const auto found = passages(made.day(), made.river.accesses.front().place, made.river.accesses.back().place);
  ASSERT_FALSE(found.empty());
  for (const Passage& passage : found) {
    EXPECT_EQ(passage.name, "below " + landmark_above(made.river, passage.from));
    EXPECT_FALSE(passage.named_reach.has_value());
  }
}

}  // namespace
}  // namespace floatwright
