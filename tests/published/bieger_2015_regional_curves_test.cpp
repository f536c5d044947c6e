// Bieger and others 2015, J. Am. Water Resour. Assoc. 51:842: bankfull width 2.70 A^0.352 m and mean depth 0.30 A^0.213
// m, A in km2, all regions of the US together; area of the section 0.95 A^0.540 m2. From memory.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/water/channel.hpp"

namespace floatwright {
namespace {

TEST(Bieger2015, BankfullSectionOfAGuessedChannelAgreesWithTheThirdCurve) {
  // The guess runs full at 1.5 m/s. Width and depth were fitted apart from the area: their product is within 20 % of it
  // between 50 and 5000 km2 (0.81 A^0.565 against 0.95 A^0.540).
  for (const double a : {50.0, 500.0, 5000.0}) {
    const Channel channel = channel_from_area(square_kilometres(a));
    const double w = 2.70 * std::pow(a, 0.352);
    const double d = 0.30 * std::pow(a, 0.213);
    const Discharge full = cubic_metres_per_second(1.5 * w * d);
    const double section = width(channel, full).si() * mean_depth(channel, full).si();
    EXPECT_NEAR(section / (0.95 * std::pow(a, 0.540)), 1.0, 0.20) << a;
    EXPECT_NEAR(mean_speed(channel, full).si(), 1.5, 1e-9);
  }
}

TEST(Bieger2015, TenTimesTheAreaWidensTheChannelByTheCurve) {
  const auto bankfull_width = [](double a) {
    const double full = 1.5 * 2.70 * 0.30 * std::pow(a, 0.352 + 0.213);
    return width(channel_from_area(square_kilometres(a)), cubic_metres_per_second(full)).si();
  };
  EXPECT_NEAR(bankfull_width(1000.0) / bankfull_width(100.0), 2.249, 1e-3);  // 10^0.352
  EXPECT_NEAR(bankfull_width(1000.0), 30.7, 0.1);
}

}  // namespace
}  // namespace floatwright
