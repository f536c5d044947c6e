#include "engine/choice/suits.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

const Judgement kJudgement;
constexpr double kExact = 1e-9;

double suits_at(Method method, WaterType type, Measured<Temperature> temperature, Measured<Turbidity> clarity = fnu(2),
                std::optional<Angle> sun = std::nullopt, bool hatch = false) {
  return suits(method, {type, temperature, clarity, sun, hatch}, kJudgement.suits);
}

TEST(Suits, AreTheTablesNumberAtItsPoints) {
  EXPECT_NEAR(suits_at(Method::Swing, WaterType::Tailout, celsius(12)), 1.0, kExact);
  EXPECT_NEAR(suits_at(Method::Strip, WaterType::Bank, celsius(18)), 0.8, kExact);
  EXPECT_NEAR(suits_at(Method::TightLine, WaterType::Pocket, celsius(14), fnu(30)), 0.6, kExact);
  EXPECT_NEAR(suits_at(Method::Dry, WaterType::Riffle, celsius(14), fnu(60)), 0.0, kExact);
}

TEST(Suits, AreStraightBetweenPointsAndFlatBeyond) {
  EXPECT_NEAR(suits_at(Method::Dry, WaterType::Bank, celsius(12)), 0.9 * 0.9, kExact);
  EXPECT_NEAR(suits_at(Method::Strip, WaterType::Run, celsius(30)), 0.7 * 0.8, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Run, celsius(12), fnu(10)), 0.95, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Run, celsius(12), fnu(500)), 0.3, kExact);
}

TEST(Suits, TakeTheTenDegreeColumnAndClearWaterWhereUnknown) {
  const Absent unknown{"no gauge"};
  EXPECT_NEAR(suits_at(Method::Dry, WaterType::Bank, unknown, unknown), 0.9 * 0.8, kExact);
}

TEST(Suits, FallForADryFlyInWindAlone) {
  Conditions still{.type = WaterType::Bank, .temperature = celsius(14), .clarity = fnu(2), .sun_elevation = {}};
  Conditions windy = still;
  still.wind = miles_per_hour(14);
  windy.wind = miles_per_hour(16);
  EXPECT_NEAR(suits(Method::Dry, still, kJudgement.suits), 0.9, kExact);
  EXPECT_NEAR(suits(Method::Dry, windy, kJudgement.suits), 0.9 * 0.4, kExact);
  for (const Method other : {Method::Swing, Method::Strip, Method::Indicator, Method::TightLine})
    EXPECT_EQ(suits(other, windy, kJudgement.suits), suits(other, still, kJudgement.suits));
}

// Cold: none at 8 C, full at 5 C, half way at 6.5 C; a run keeps 0.7 of itself, a pool all.
TEST(Suits, FallInTheFastWaterWhenItIsCold) {
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Run, celsius(8)), 1.0, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Run, celsius(6.5)), 0.85, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Run, celsius(5)), 0.7, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Pool, celsius(2)), 0.8, kExact);
}

TEST(Suits, CountTheLightOnlyWhereTheSunIsKnown) {
  EXPECT_NEAR(suits_at(Method::Strip, WaterType::Bank, celsius(12), fnu(2), degrees(9)), 1.2, kExact);
  EXPECT_NEAR(suits_at(Method::Strip, WaterType::Bank, celsius(12), fnu(2), degrees(11)), 1.0, kExact);
}

TEST(Suits, DoubleForADryFlyInAHatch) {
  EXPECT_NEAR(suits_at(Method::Dry, WaterType::Riffle, celsius(14), fnu(2), {}, true), 1.6, kExact);
  EXPECT_NEAR(suits_at(Method::Indicator, WaterType::Riffle, celsius(14), fnu(2), {}, true), 0.72, kExact);
}

TEST(Worth, IsFullAtHalfTheTimeAndNeverOverOne) {
  EXPECT_NEAR(worth(0.8, 0.5, 0.25, kJudgement.choice), 0.2, kExact);
  EXPECT_NEAR(worth(0.8, 0.5, 0.50, kJudgement.choice), 0.4, kExact);
  EXPECT_NEAR(worth(0.8, 0.5, 0.95, kJudgement.choice), 0.4, kExact);
  EXPECT_EQ(worth(1.0, 1.6, 0.9, kJudgement.choice), 1.0);
}

}  // namespace
}  // namespace floatwright
