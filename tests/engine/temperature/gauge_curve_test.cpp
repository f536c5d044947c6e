// The shares of the day-to-day change and the default bands are judgement (docs/equations.md); numbers beside by hand.
#include "engine/temperature/gauge_curve.hpp"

#include <date/date.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "engine/temperature/curve_band.hpp"
#include "engine/temperature/tune_temperature.hpp"
#include "engine/units/unit.hpp"
#include "warm_record.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
using ::testing::HasSubstr;

Series<Temperature> north_fork_means() {
  std::ifstream file(FLOATWRIGHT_SOURCE_DIR
                     "/fixtures/backtest/north_fork_years/va_nf_shenandoah_two_gauges_daily_2008_2016.csv");
  Series<Temperature> means;
  std::string line;
  std::getline(file, line);  // date,01632000_cfs,01632000_cd,01632000_temp_C,...
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    Instant day;
    std::string flow, code, mean;
    cells >> date::parse("%F", day);
    cells.ignore();
    std::getline(cells, flow, ',') && std::getline(cells, code, ',') && std::getline(cells, mean, ',');
    if (mean.empty()) continue;
    means.times.push_back(day);
    means.values.push_back(celsius(std::stod(mean)));
  }
  return means;
}

double carried(const Series<Temperature>& record, double lead_h) {
  const HourlyTemperatures hourly(record);
  return in_celsius(*CurveOrigin::at(hourly, kNow)->ahead(period(floatwright::hours(lead_h)), untuned_leads()));
}
ErrorBand band_at_24h(const Series<Temperature>& record) {
  return band_at(curve_bands(HourlyTemperatures(record), std::nullopt), hours{24});
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
  EXPECT_NEAR(in_kelvins((*curve)[48 + 6].high - (*curve)[48 + 6].middle), 1.0, 1e-9);
  EXPECT_NEAR(in_kelvins((*curve)[48 + 24].middle - (*curve)[48 + 24].low), 1.8, 1e-9);
}
TEST(GaugeCurve, TakesItsBandFromItsOwnPastErrorsWhereItCan) {
  // Days alternate 2 C apart: at 24 h every past forecast was 2 C off; of a normal law P90 is 1.2816 sd, mean |e|
  // 0.798.
  const auto band = band_at_24h(temperatures(24 * 12, [](int h) { return (h / 24) % 2 == 0 ? 12.0 : 10.0; }));
  EXPECT_NEAR(in_kelvins(band.low), -2.0 * 1.2816 / 0.798, 0.02);
  EXPECT_NEAR(in_kelvins(band.high), 2.0 * 1.2816 / 0.798, 0.02);
}
TEST(GaugeCurve, NeverClaimsToBeBetterThanASensor) {
  EXPECT_NEAR(in_kelvins(band_at_24h(temperatures(24 * 12, daily_swing)).high), 0.2, 1e-9);
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
              HasSubstr("no water temperature since 16:00 UTC on Tue 11 May"));
}

TEST(GaugeCurve, MovesWithTheAirByItsShare) {
  const auto record = temperatures(72, daily_swing);
  Series<Temperature> air;  // 10 C until tonight, 18 C from then on
  for (int h = -48; h <= 72; ++h) {
    air.times.push_back(kNow + hours{h});
    air.values.push_back(celsius(h < 12 ? 10.0 : 18.0));
  }
  const auto still = gauge_curve(record, grid_around(), kNow),
             warmer = gauge_curve(record, grid_around(), kNow, {{}, air, 0.25});
  const auto moved = [&](std::size_t h) { return in_kelvins((*warmer)[48 + h].middle - (*still)[48 + h].middle); };
  EXPECT_NEAR(moved(0), 0.0, 1e-9);
  EXPECT_NEAR(moved(24), 0.25 * 8.0, 0.1);
  EXPECT_NEAR(moved(48), 0.25 * 8.0, 0.1);
}
TEST(GaugeCurve, LearnsHowFarTheWaterFollowsTheAir) {
  // Air that steps by day, water that takes up 0.6 of it at once: a share far from the stated one.
  const auto step = [](int h) { return 4.0 * std::sin(1.7 * std::pow(std::floor(h / 24.0), 2.0)); };  // no rhythm
  GaugeRecord record;
  record.temperature = temperatures(24 * 150, [&](int h) { return daily_swing(h) + 0.6 * step(h); });
  const auto air = temperatures(24 * 150, [&](int h) { return 12.0 + step(h); });
  const auto tuning = tune_temperature({.record = record, .air = air, .time_zone = "UTC", .made_on = kNow});
  EXPECT_NEAR(*tuning.tuned->air_share, 0.6, 0.15);
}
TEST(GaugeCurve, OfDailyMeansHoldsTheNextDaysMeanFourTimesOfFive) {
  // USGS 01632000, water temperature, daily means.
  const Series<Temperature> means = north_fork_means();
  int inside = 0, asked = 0;
  for (std::size_t i = 100; i + 1 < means.size(); i += 2) {
    if (means.times[i + 1] - means.times[i] != hours{24}) continue;
    const auto known = up_to(means, means.times[i]);
    const auto curve =
        curve_of_daily_means(known, {means.times[i + 1] + hours{12}, hours{1}, 1}, means.times[i] + hours{30});
    const Temperature seen = means.values[i + 1];
    ++asked;
    if (seen <= (*curve)[0].high + kelvins(-3.0) && seen >= (*curve)[0].low + kelvins(3.0))
      ++inside;  // the hours left out
  }
  EXPECT_GT(asked, 100);
  EXPECT_NEAR(static_cast<double>(inside) / asked, 0.8, 0.05);
}

}  // namespace
}  // namespace floatwright
