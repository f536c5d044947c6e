// The shares of the day-to-day change and the default bands are judgement (docs/equations.md); numbers beside by hand.
#include "engine/temperature/gauge_curve.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "engine/units/unit.hpp"
#include "warm_record.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using ::testing::HasSubstr;

double carried(const Series<Temperature>& record, double lead_h) {
  return in_celsius(*carried_forward(record, kNow, floatwright::hours(lead_h)));
}

TEST(GaugeCurve, RepeatsADayThatIsLikeTheLast) {
  const auto record = temperatures(72, daily_swing);
  for (const int h : {3, 9, 17, 24, 31, 40, 48}) EXPECT_NEAR(carried(record, h), daily_swing(-h), 1e-9) << h;
}
TEST(GaugeCurve, CarriesTheChangeSinceYesterdayByItsShare) {
  const auto record = temperatures(72, [](int h) { return h < 24 ? 12.0 : 10.0; });  // two degrees warmer since a day
  EXPECT_NEAR(carried(record, 3), 12.0 + 0.85 * 2.0, 1e-9);  // the shape, 21 h ago, is of the warm day
  EXPECT_NEAR(carried(record, 12), 12.0 + 0.45 * 2.0, 1e-9);
  EXPECT_NEAR(carried(record, 24), 12.0, 1e-9);
  EXPECT_NEAR(carried(record, 36), 12.0 + 0.2 * 2.0, 1e-9);
}
TEST(GaugeCurve, HasNoStepAtNowNorAWholeDayAhead) {
  const auto record = temperatures(96, [](int h) { return daily_swing(h) - 0.06 * h; });
  EXPECT_NEAR(carried(record, 0.01), in_celsius(record.values.back()), 0.02);
  EXPECT_NEAR(carried(record, 24.01), carried(record, 23.99), 0.02);
  EXPECT_NEAR(carried(record, 48.01), carried(record, 47.99), 0.02);
}
TEST(GaugeCurve, IsTheRecordInThePast) {
  const auto curve = gauge_curve(temperatures(72, daily_swing), grid_around(), kNow);
  EXPECT_NEAR(in_celsius((*curve)[48 - 7].low), daily_swing(7), 1e-9);
  EXPECT_NEAR(in_celsius((*curve)[48 - 7].high), daily_swing(7), 1e-9);
}
TEST(GaugeCurve, TakesTheStatedBandFromAShortRecord) {
  const auto curve = gauge_curve(temperatures(72, daily_swing), grid_around(), kNow);
  EXPECT_NEAR(in_kelvins((*curve)[48 + 6].high - (*curve)[48 + 6].middle), 0.8, 1e-9);
  EXPECT_NEAR(in_kelvins((*curve)[48 + 24].middle - (*curve)[48 + 24].low), 1.5, 1e-9);
}
TEST(GaugeCurve, TakesItsBandFromItsOwnPastErrorsWhereItCan) {
  // Days alternate 2 C apart: at 24 h every past forecast was 2 C off, half of them either way.
  const auto record = temperatures(24 * 12, [](int h) { return (h / 24) % 2 == 0 ? 12.0 : 10.0; });
  const ErrorBand band = error_band(record, floatwright::hours(24));
  EXPECT_TRUE(band.from_record);
  EXPECT_NEAR(in_kelvins(band.low), -2.0, 1e-9);
  EXPECT_NEAR(in_kelvins(band.high), 2.0, 1e-9);
}
TEST(GaugeCurve, NeverClaimsToBeBetterThanASensor) {
  const ErrorBand band = error_band(temperatures(24 * 12, daily_swing), floatwright::hours(24));
  EXPECT_TRUE(band.from_record);
  EXPECT_NEAR(in_kelvins(band.high), 0.2, 1e-9);
}
TEST(GaugeCurve, ReadsNothingLaterThanNow) {
  const auto record = temperatures(
      82, [](int h) { return h < 10 ? 30.0 : 10.0; }, kNow + hours{10});
  const auto curve = gauge_curve(record, grid_around(), kNow);
  EXPECT_NEAR(in_celsius((*curve)[48 + 5].middle), 10.0, 1e-9);
}
TEST(GaugeCurve, IsUnknownWithoutReadingsADayBeforeOrAfterTwoSilentDays) {
  EXPECT_FALSE(gauge_curve({}, grid_around(), kNow).has_value());
  EXPECT_THAT(gauge_curve(temperatures(12, daily_swing), grid_around(), kNow).why_absent(),
              HasSubstr("too few readings"));
  EXPECT_THAT(gauge_curve(temperatures(72, daily_swing, kNow - hours{50}), grid_around(), kNow).why_absent(),
              HasSubstr("no water temperature since 2027-05-11 16:00 UTC"));
}

}  // namespace
}  // namespace floatwright
