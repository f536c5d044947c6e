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

// Drag 20 % off either way is a rate about 12 % off either way: Cd falls with the rate, so somewhat more than the
// square root of 1.2 and 0.8 where it falls fast.
TEST(SinkingSection, ADragLawTwentyPerCentOffIsARateTwelvePerCentOff) {
  for (const double inches : {1.5, 3.0, 5.0, 7.0}) {
    const Length diameter = default_diameter(inches_per_second(inches));
    const auto band = rate_band(weight_for_rate(inches_per_second(inches), diameter, kWater), diameter, kWater);
    ASSERT_TRUE(band);
    EXPECT_NEAR(in_inches_per_second(band->best), inches, 1e-6 * inches);
    EXPECT_NEAR(band->low / band->best, 0.88, 0.03) << inches;
    EXPECT_NEAR(band->high / band->best, 1.12, 0.03) << inches;
  }
}

TEST(SinkingSection, ANominalRateAloneTakesTheUsualDiameterAndTheDensityThatSinksSo) {
  const auto found = sinking_section({inches_per_second(5.0), {}, {}}, kWater);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->section.diameter, millimetres(1.0));
  EXPECT_EQ(found->rate, inches_per_second(5.0));
  EXPECT_FALSE(found->band);
  const auto again = sink_rate(found->section.density, found->section.diameter, kWater);
  ASSERT_TRUE(again);
  EXPECT_NEAR(in_inches_per_second(*again), 5.0, 1e-6);
}

TEST(SinkingSection, WithGrainsPerFootTheDiameterFollowsAndADensityOverFourWarns) {
  const auto usual = sinking_section({inches_per_second(5.0), grains_per_foot(10.0), {}}, kWater);
  ASSERT_TRUE(usual);
  EXPECT_EQ(usual->section.diameter, section_for(grains_per_foot(10.0), inches_per_second(5.0), kWater)->diameter);
  EXPECT_FALSE(usual->optimistic);
  EXPECT_TRUE(sinking_section({inches_per_second(9.0), grains_per_foot(4.0), {}}, kWater)->optimistic);
}

TEST(SinkingSection, WeighedAndMeasuredTheRateFollowsWithItsBandAndJudgesTheNominalOne) {
  const auto measured = sinking_section({{}, grains_per_foot(10.0), millimetres(1.1)}, kWater);
  ASSERT_TRUE(measured);
  ASSERT_TRUE(measured->band);
  const auto rate = sink_rate(grains_per_foot(10.0), millimetres(1.1), kWater);
  EXPECT_NEAR(measured->rate / *rate, 1.0, 1e-9);
  EXPECT_LT(measured->band->low, measured->rate);
  EXPECT_GT(measured->band->high, measured->rate);
  // 11 % over is within what the drag law may be off, 20 % is not.
  const auto judged = [&](double times) {
    return sinking_section({measured->rate * times, grains_per_foot(10.0), millimetres(1.1)}, kWater)->optimistic;
  };
  EXPECT_FALSE(judged(1.11));
  EXPECT_TRUE(judged(1.20));
}

TEST(SinkingSection, WithTooLittleOrWhatCannotBeSaysSo) {
  const auto why = [](const KnownOfSection& known) { return sinking_section(known, kWater).why_absent(); };
  EXPECT_EQ(why({}), "give the sink rate, or the weight per length and the diameter");
  EXPECT_EQ(why({{}, grains_per_foot(10.0), {}}), "give the sink rate, or the weight per length and the diameter");
  EXPECT_EQ(why({Speed{}, {}, {}}), "the line's sink rate is not above 0");
  EXPECT_EQ(why({inches_per_second(5.0), LinearDensity{}, {}}), "the line's weight per length is not above 0");
  EXPECT_EQ(why({{}, grains_per_foot(10.0), Length{}}), "the section has no diameter");
  EXPECT_EQ(why({{}, grains_per_foot(10.0), millimetres(3.0)}), "a line of this weight and diameter floats");
}

TEST(Section, DefaultDiametersGrowThinnerWithTheRate) {
  EXPECT_EQ(default_diameter(inches_per_second(3)), millimetres(1.2));
  EXPECT_EQ(default_diameter(inches_per_second(5)), millimetres(1.0));
  EXPECT_EQ(default_diameter(inches_per_second(7)), millimetres(0.9));
}

}  // namespace
}  // namespace floatwright
