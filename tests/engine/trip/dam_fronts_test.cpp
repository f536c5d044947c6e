#include "engine/trip/dam_fronts.hpp"

#include <gtest/gtest.h>

#include "tests/engine/trip/hand_made_day.hpp"

namespace floatwright {
namespace {

DamFront front_at(double mile, int earliest, int latest, double before = 1400.0, double after = 1800.0) {
  DamFront front;
  front.place = river_mile(mile);
  front.before = cubic_feet_per_second(before);
  front.after = cubic_feet_per_second(after);
  front.leaves = local(7);
  front.earliest = local(earliest);
  front.latest = local(latest);
  return front;
}

HandMadeDay below_a_dam(std::vector<DamFront> fronts) {
  HandMadeDay made;
  Dam dam;
  dam.place = river_mile(11.0);
  made.river.dams = {dam};
  made.fronts = std::move(fronts);
  return made;
}

TEST(RiseExpected, FromTheEarliestHourAboveToTheLatestBelow) {
  HandMadeDay made = below_a_dam({front_at(10.0, 8, 9), front_at(6.0, 10, 12)});
  const RiverDay& day = made.day();
  EXPECT_FALSE(rise_expected(day, river_mile(9.0), river_mile(7.0), local(7, 30)));
  EXPECT_TRUE(rise_expected(day, river_mile(9.0), river_mile(7.0), local(9, 30)));
  EXPECT_FALSE(rise_expected(day, river_mile(9.0), river_mile(7.0), local(12, 30)));
  EXPECT_TRUE(rise_expected(day, river_mile(9.0), river_mile(7.0), local(7), local(8, 30))) << "before they leave";
  EXPECT_FALSE(rise_expected(day, river_mile(9.0), river_mile(7.0), local(6), local(7, 30)));
}

TEST(RiseExpected, NeverAboveTheDam) {
  HandMadeDay made = below_a_dam({front_at(10.0, 8, 9)});
  EXPECT_FALSE(rise_expected(made.day(), river_mile(12.0), river_mile(11.5), local(8)));
}

TEST(RiseExpected, NotOfADrop) {
  HandMadeDay made = below_a_dam({front_at(10.0, 8, 9, 1800.0, 1400.0), front_at(6.0, 10, 12, 1800.0, 1400.0)});
  EXPECT_FALSE(rise_expected(made.day(), river_mile(9.0), river_mile(7.0), local(9, 30)));
}

}  // namespace
}  // namespace floatwright
