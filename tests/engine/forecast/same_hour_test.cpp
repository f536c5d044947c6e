#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "engine/forecast/ahead.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/forecast/outlook.hpp"
#include "synthetic_record.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using std::chrono::sys_days;
using std::chrono::year;
const std::string kDenver = "America/Denver";

// Denver put its clocks forward on 14 March 2027 at 02:00, from UTC-7 to UTC-6 (US rule: second Sunday of March).
TEST(LocalClock, GoesBackToTheSameHourOnTheWallAcrossDaylightSaving) {
  const Instant monday_noon = sys_days{year{2027} / 3 / 15} + hours{18};                            // 12:00 at UTC-6
  EXPECT_EQ(same_hour_before(monday_noon, 2, kDenver), sys_days{year{2027} / 3 / 13} + hours{19});  // 12:00 at UTC-7
}
TEST(LocalClock, TakesTheJumpForAnHourThatTheClockSkips) {
  const Instant half_past_two = sys_days{year{2027} / 3 / 15} + hours{8} + std::chrono::minutes{30};  // 02:30 at UTC-6
  EXPECT_EQ(same_hour_before(half_past_two, 1, kDenver), sys_days{year{2027} / 3 / 14} + hours{9});
}
TEST(LocalClock, KnowsTheWeekendByTheWallAndNotByUtc) {
  EXPECT_FALSE(weekend(sys_days{year{2027} / 5 / 15} + hours{5}, kDenver));  // Friday 23:00 in Denver
  EXPECT_TRUE(weekend(sys_days{year{2027} / 5 / 17} + hours{5}, kDenver));   // Sunday 23:00 in Denver
}
TEST(LocalClock, RunsASeasonOverTheNewYear) {
  const Season winter{{11, 1}, {2, 28}};
  EXPECT_TRUE(in_season(winter, sys_days{year{2027} / 1 / 5} + hours{12}, kDenver));
  EXPECT_FALSE(in_season(winter, sys_days{year{2027} / 3 / 1} + hours{12}, kDenver));
}
TEST(LocalClock, CountsInUtcWhereTheZoneIsUnknown) {
  EXPECT_FALSE(zone_known("Lantern/Heron"));
  EXPECT_EQ(same_hour_before(kNow, 1, "Lantern/Heron"), kNow - hours{24});
}

// Weekdays 09:00 to 21:00 local at 60, else 40; weekends 40 all day; as a power station might run.
double by_the_clock(Instant t) {
  const Instant local = t - hours{t < sys_days{year{2027} / 3 / 14} + hours{9} ? 7 : 6};
  const auto of_day = local - std::chrono::floor<std::chrono::days>(local);
  return !weekend(t, kDenver) && of_day >= hours{9} && of_day < hours{21} ? 60.0 : 40.0;
}
FlowHistory station_until(Instant newest) {
  return flow_history(record_of(
                          24 * 20, [&](int h) { return by_the_clock(newest - hours{h}); }, newest)
                          .discharge,
                      newest);
}

TEST(SameHour, TellsWeekdaysFromTheWeekend) {
  const Instant friday_evening = sys_days{year{2027} / 5 / 14} + hours{23};  // 17:00 local
  const FlowHistory history = station_until(friday_evening);
  const Instant saturday_noon = sys_days{year{2027} / 5 / 15} + hours{18};
  EXPECT_NEAR(std::exp(same_hour(history, saturday_noon, kDenver)->middle), 40.0, 1e-6);
  const Instant thursday_evening = friday_evening - hours{24}, friday_noon = saturday_noon - hours{24};
  EXPECT_NEAR(std::exp(same_hour(station_until(thursday_evening), friday_noon, kDenver)->middle), 60.0, 1e-6);
}
TEST(SameHour, HoldsTheHourOnTheWallAcrossDaylightSaving) {
  const Instant sunday_evening = sys_days{year{2027} / 3 / 15} + hours{2};  // 20:00 local, after the jump
  const Instant monday_half_past_nine = sys_days{year{2027} / 3 / 15} + hours{15} + std::chrono::minutes{30};
  EXPECT_NEAR(std::exp(same_hour(station_until(sunday_evening), monday_half_past_nine, kDenver)->middle), 60.0, 1e-6);
}
TEST(SameHour, IsBoundedByTheLeastAndTheMostOfTheLastFourteenDays) {
  const FlowHistory history = station_until(sys_days{year{2027} / 5 / 13} + hours{23});
  const auto friday_noon = same_hour(history, sys_days{year{2027} / 5 / 14} + hours{18}, kDenver);
  EXPECT_NEAR(std::exp(friday_noon->low), 40.0, 1e-6);  // the weekends' noons
  EXPECT_NEAR(std::exp(friday_noon->high), 60.0, 1e-6);
}
TEST(SameHour, HasNothingToRepeatInAShortRecordSoTheFlowIsHeld) {
  Dam dam;
  dam.ramping = true;
  const auto record = record_of(8, [](int) { return 45.0; });
  const auto outlook = gauge_outlook({record, &dam, false, false, kDenver}, grid_around(), kNow);
  EXPECT_EQ(outlook.state, FlowState::Regulated);
  EXPECT_NEAR(outlook.flow->middle[96 + 10].si(), 45.0, 1e-9);
}

}  // namespace
}  // namespace floatwright
