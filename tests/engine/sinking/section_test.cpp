#include "engine/sinking/section.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "engine/tackle/tackle.hpp"

namespace floatwright {
namespace {

const WaterProperties kWater = water_at(celsius(10.0));

TEST(Section, DiameterFromWeightAndRateSinksAtThatRateAgain) {
  for (const double inches : {1.5, 3.0, 5.0, 7.0, 9.0}) {
    for (const double weight : {6.0, 9.0, 12.0}) {
      const auto section = section_for(grains_per_foot(weight), inches_per_second(inches), kWater);
      ASSERT_TRUE(section) << inches << " in/s, " << weight << " gr/ft";
      const auto rate = sink_rate(grains_per_foot(weight), section->diameter, kWater);
      ASSERT_TRUE(rate);
      EXPECT_NEAR(in_inches_per_second(*rate), inches, 1e-6 * inches);
    }
  }
}

TEST(Section, ADensityOverFourSaysThatTheNominalRateIsOptimistic) {
  EXPECT_FALSE(section_for(grains_per_foot(10.0), inches_per_second(5.0), kWater)->optimistic);
  const auto fast = section_for(grains_per_foot(4.0), inches_per_second(9.0), kWater);
  ASSERT_TRUE(fast);
  EXPECT_GT(in_kilograms_per_cubic_metre(fast->density), 4000.0);
  EXPECT_TRUE(fast->optimistic);
}

TEST(Section, ALineLighterThanWaterRises) {
  const auto rate = sink_rate(kilograms_per_cubic_metre(870.0), millimetres(1.6), kWater);
  ASSERT_TRUE(rate);
  EXPECT_LT(rate->si(), 0.0);
  EXPECT_NEAR(weight_for_rate(*rate, millimetres(1.6), kWater).si(),
              weight_for_density(kilograms_per_cubic_metre(870.0), millimetres(1.6), kWater).si(), 1e-9);
}

TEST(Section, WithoutDiameterWeightOrRateHasNoAnswer) {
  EXPECT_FALSE(sink_rate(kilograms_per_cubic_metre(1500.0), Length{}, kWater));
  EXPECT_FALSE(section_for(LinearDensity{}, inches_per_second(5.0), kWater));
  EXPECT_FALSE(section_for(grains_per_foot(10.0), Speed{}, kWater));
}

TEST(Section, DefaultDiametersGrowThinnerWithTheRate) {
  EXPECT_EQ(default_diameter(inches_per_second(3)), millimetres(1.2));
  EXPECT_EQ(default_diameter(inches_per_second(5)), millimetres(1.0));
  EXPECT_EQ(default_diameter(inches_per_second(7)), millimetres(0.9));
}

}  // namespace
}  // namespace floatwright
