#include "engine/river/place_text.hpp"

#include <gtest/gtest.h>

namespace floatwright {
namespace {

TEST(PlaceText, KeepsOneDecimalAndNoMoreThanNeeded) {
  const River river;
  EXPECT_EQ(place_text(river, river_mile(38.0)), "mile 38.0");
  EXPECT_EQ(place_text(river, river_mile(40.25)), "mile 40.25");
  EXPECT_EQ(place_text(river, river_mile(0.0)), "mile 0.0");
}

TEST(PlaceText, CountsAsTheFileCounts) {
  River river;
  river.kilometres = true;
  river.miles_from_source = true;
  EXPECT_EQ(place_text(river, river_kilometre(-12.5)), "km 12.5");
  EXPECT_EQ(place_text(river, river_kilometre(-0.0)), "km 0.0");
  EXPECT_EQ(distance_text(river, kilometres(3.04)), "3.0 km");
}

}  // namespace
}  // namespace floatwright
