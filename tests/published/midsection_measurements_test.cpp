// Discharge by the midsection method.
// - Turnipseed & Sauer 2010, USGS Techniques and Methods 3-A8, figure 2: the field note truncates each part to two
//   decimals (area 143.6 ft2, 73.39 cfs); unrounded it is 143.845 ft2 and 73.564 cfs. Seen as retyped in a test of the
//   USGS, which allows 1 %.
// - Peckerwood Creek, North Carolina, and two sections of North Carolina streams: published verticals, their totals
//   worked out by hand from q = v d (x_after - x_before)/2, for they are published without one.
#include <gtest/gtest.h>

#include <vector>

#include "engine/water/midsection.hpp"

namespace floatwright {
namespace {

std::vector<Vertical> in_feet_each(const std::vector<double>& across, const std::vector<double>& depth,
                                   const std::vector<double>& speed) {
  std::vector<Vertical> verticals;
  for (std::size_t i = 0; i < across.size(); ++i)
    verticals.push_back({feet(across[i]), feet(depth[i]), mean_metres_per_second(in_metres(feet(1.0)) * speed[i])});
  return verticals;
}

const std::vector<Vertical> kFieldNote = in_feet_each(
    {1,  4,  7,  10, 13, 16, 19, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 47, 50, 53, 56, 59, 62, 65, 68, 71},
    {0,    0.95, 1.4,  2.0,  2.1,  2.3,  2.25, 2.21, 2.52, 2.81, 3.01, 2.95, 3.11, 3.21,
     3.03, 3.11, 2.92, 2.54, 2.20, 2.05, 2.22, 2.14, 2.23, 2.04, 1.43, 1.07, 0.62, 0},
    {0,    0.29, 0.38, 0.32, 0.40, 0.42, 0.43, 0.48, 0.57, 0.62, 0.64, 0.72, 0.72, 0.74,
     0.72, 0.65, 0.58, 0.52, 0.51, 0.47, 0.46, 0.43, 0.42, 0.40, 0.36, 0.40, 0.28, 0});

TEST(Midsection, OfTheManualsFieldNoteIsItsDischargeAndArea) {
  const auto section = midsection(kFieldNote);
  ASSERT_TRUE(section.has_value());
  EXPECT_NEAR(in_cubic_feet_per_second(section->discharge), 73.39, 0.01 * 73.39);
  EXPECT_NEAR(in_cubic_feet_per_second(section->discharge), 73.564, 0.0005);
  const double square_foot = in_metres(feet(1.0)) * in_metres(feet(1.0));  // m2
  EXPECT_NEAR(in_square_metres(section->area) / square_foot, 143.6, 0.01 * 143.6);
  EXPECT_NEAR(in_square_metres(section->area) / square_foot, 143.845, 0.0005);
  EXPECT_NEAR(in_feet(section->width), 70.0, 1e-9);
}

TEST(Midsection, IsTheSameFromEitherBank) {
  const std::vector<Vertical> back(kFieldNote.rbegin(), kFieldNote.rend());
  EXPECT_NEAR(midsection(back)->discharge / midsection(kFieldNote)->discharge, 1.0, 1e-12);
}

TEST(Midsection, OfPeckerwoodCreek) {
  const auto section = midsection(in_feet_each(
      {1.8, 2, 2.3, 2.6, 2.8, 3, 3.2, 3.4, 3.6, 3.8, 4.1, 5, 5.6, 6, 6.3, 6.6, 6.9, 8.1},
      {0, .5, .55, .4, .3, .35, .35, .4, .4, .4, .55, .5, .55, .25, .25, .2, .2, 0},
      {0, .70, 1.13, 1.58, 1.52, 1.40, 1.01, 1.02, 1.18, .80, .29, .08, .26, .44, .31, .29, .08, 0}));
  ASSERT_TRUE(section.has_value());
  EXPECT_NEAR(in_cubic_feet_per_second(section->discharge), 1.23620, 5e-6);
  EXPECT_NEAR(in_square_metres(section->area) / 0.09290304, 2.20250, 5e-6);  // 1 ft2 = 0.09290304 m2, exact
}

TEST(Midsection, OfTwoStreamsWithVerticalsTwoFeetApart) {
  const auto first = midsection(in_feet_each({0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24.7},
                                             {0, .9, 1.1, 1.1, 1.1, .9, .9, .9, .9, .9, .9, .7, 0},
                                             {0, 1.01, 1.07, 1.22, 1.22, 1.36, 1.28, 1.38, 1.29, .88, .52, 0, 0}));
  const auto second = midsection(in_feet_each({0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 19.7},
                                              {0, 1.2, 1.5, 1.4, 1.4, 1.4, 1.5, 1.7, 2, 1.5, 0},
                                              {0, .53, .76, .95, .90, .98, 1.01, .9, .9, 0, 0}));
  EXPECT_NEAR(in_cubic_feet_per_second(first->discharge), 21.618, 5e-4);
  EXPECT_NEAR(in_cubic_feet_per_second(second->discharge), 21.166, 5e-4);
}

TEST(Midsection, SaysWhyThereIsNone) {
  const auto why = [](std::vector<Vertical> verticals) {
    const auto section = midsection(verticals);
    return section.has_value() ? std::string{} : section.why_absent();
  };
  EXPECT_EQ(why({}), "fewer than three verticals");
  EXPECT_EQ(why(in_feet_each({0, 2, 1, 4}, {0, 1, 1, 0}, {0, 1, 1, 0})), "distances that turn back or stand still");
  EXPECT_EQ(why(in_feet_each({0, 2, 4}, {0, -1, 0}, {0, 1, 0})), "a depth under 0");
  EXPECT_EQ(why(in_feet_each({0, 2, 4}, {0, 1, 0}, {0, 0, 0})), "nothing that flows");
}

}  // namespace
}  // namespace floatwright
