// Recession of a river without rain: Q(t) = Q0 k^t, half time ln 0.5/ln k (Barnes 1939; Linsley, Kohler & Paulhus;
// from memory). With k = 0.97 a day and Q0 = 10 m3/s: half in 22.757 days, 4.0101 m3/s after 30. A river made by that
// formula, rains between, is given to the fit: what is forecast on a falling day must be k and k^2 of the newest flow.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/forecast/daily_ahead.hpp"
#include "engine/forecast/outlook.hpp"
#include "engine/forecast/tune_daily_flow.hpp"
#include "engine/forecast/tune_flow.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr double kA_day = 0.97;
constexpr std::chrono::sys_days kFirst{std::chrono::year{2024} / 1 / 1};

// m3/s; days since the last rain ended go round: `falling` days of recession from 10 m3/s, `rising` back to it.
double flow(double day, double falling, double rising) {
  const double since = std::fmod(day, falling + rising);
  if (since <= falling) return 10.0 * std::pow(kA_day, since);
  return 10.0 * std::pow(kA_day, falling * (1.0 - (since - falling) / rising));
}

TEST(Recession, OfThePublishedConstantHalvesInItsHalfTime) {
  EXPECT_NEAR(flow(30.0, 40.0, 8.0), 4.0101, 1e-4);
  EXPECT_NEAR(flow(22.757, 40.0, 8.0), 5.0, 1e-3);
}

TEST(Recession, IsForecastDayByDayOnceTuned) {
  Series<Discharge> means;
  const int days = 14 * 48 + 21;  // ends three weeks into a recession
  for (int d = 0; d < days; ++d) {
    means.times.push_back(kFirst + std::chrono::days{d});
    means.values.push_back(cubic_metres_per_second(flow(d, 40.0, 8.0)));
  }
  const DailyTuning tuning = tune_daily_flow({.own = {"ferry", "usgs:00000003", means}, .made_on = means.times.back()});
  ASSERT_TRUE(tuning.tuned.has_value());
  const DailyRecord record = daily_record(means);
  const DailyAhead ahead = daily_ahead(record, &*tuning.tuned, nullptr);
  const DailyAhead untuned = daily_ahead(record, nullptr, nullptr);
  for (std::size_t i = 0; i < 2; ++i) {
    const double days_ahead = static_cast<double>(i) + 1.0, exact = std::pow(kA_day, days_ahead);
    EXPECT_NEAR(std::exp(ahead.days[i].change), exact, 0.003 * days_ahead);
    EXPECT_GT(std::exp(untuned.days[i].change), exact + 0.005);  // a river of which nothing is known falls less: fitted
    EXPECT_LE(std::exp(ahead.days[i].change + ahead.days[i].band.low), exact);
    EXPECT_GE(std::exp(ahead.days[i].change + ahead.days[i].band.high), exact);
  }
}

TEST(Recession, IsForecastHourByHourOnceTuned) {
  GaugeRecord record;
  record.gauge = "ferry";
  const int last = 24 * (8 * 24 + 11);  // eleven days into a recession
  for (int h = 0; h <= last; ++h) {
    record.discharge.times.push_back(kFirst + std::chrono::hours{h});
    record.discharge.values.push_back(cubic_metres_per_second(flow(h / 24.0, 20.0, 4.0)));
  }
  const Instant now = record.discharge.times.back();
  const FlowTuning tuning =
      tune_flow({.record = record, .below_dam = false, .time_zone = "Etc/UTC", .above = nullptr, .made_on = now});
  ASSERT_TRUE(tuning.tuned.has_value());
  const TimeGrid grid{now - std::chrono::hours{96}, std::chrono::hours{1}, 96 + 49};
  const GaugeOutlook outlook =
      gauge_outlook({.record = record, .time_zone = "Etc/UTC", .tuned = &*tuning.tuned}, grid, now);
  ASSERT_TRUE(outlook.flow.has_value());
  for (const int days_ahead : {1, 2}) {
    const double ratio = outlook.flow->middle[96 + 24 * static_cast<std::size_t>(days_ahead)] / record.discharge.values.back();
    EXPECT_NEAR(ratio, std::pow(kA_day, days_ahead), 0.003 * days_ahead);
  }
}

}  // namespace
}  // namespace floatwright
