#include <gmock/gmock.h>

#include "engine/readings/gauge_record.hpp"
#include "tests/engine/readings/rows.hpp"

namespace floatwright {
namespace {

const Series<Discharge> kFlow{{kNoon, kNoon + std::chrono::hours{2}, kNoon + std::chrono::hours{9}},
                              {cubic_metres_per_second(10), cubic_metres_per_second(20), cubic_metres_per_second(30)}};

TEST(ValueAt, IsLinearBetweenTwoReadings) {
  EXPECT_DOUBLE_EQ(value_at(kFlow, kNoon + std::chrono::minutes{30}).value().si(), 12.5);
}

TEST(ValueAt, IsTheReadingItselfAtItsInstant) {
  EXPECT_DOUBLE_EQ(value_at(kFlow, kNoon + std::chrono::hours{9}).value().si(), 30.0);
}

TEST(ValueAt, IsAbsentAcrossAWideGap) {
  EXPECT_EQ(value_at(kFlow, kNoon + std::chrono::hours{5}).why_absent(), "a gap in the readings");
  EXPECT_TRUE(value_at(kFlow, kNoon + std::chrono::hours{5}, std::chrono::hours{7}).has_value());
}

TEST(ValueAt, IsAbsentOutsideTheRecord) {
  EXPECT_FALSE(value_at(kFlow, kNoon - std::chrono::seconds{1}).has_value());
  EXPECT_FALSE(value_at(kFlow, kNoon + std::chrono::hours{9} + std::chrono::seconds{1}).has_value());
  EXPECT_FALSE(value_at(Series<Stage>{}, kNoon).has_value());
}

TEST(ValueAt, TakesTemperaturesStagesAndTurbiditiesAlike) {
  const std::vector<Instant> times{kNoon, kNoon + std::chrono::hours{1}};
  const Instant half = kNoon + std::chrono::minutes{30};
  EXPECT_DOUBLE_EQ(in_celsius(*value_at(Series<Temperature>{times, {celsius(-1), celsius(2)}}, half)), 0.5);
  EXPECT_DOUBLE_EQ(in_metres(*value_at(Series<Stage>{times, {stage_metres(-1), stage_metres(2)}}, half)), 0.5);
  EXPECT_DOUBLE_EQ(in_fnu(*value_at(Series<Turbidity>{times, {fnu(4), fnu(8)}}, half)), 6.0);
}

}  // namespace
}  // namespace floatwright
