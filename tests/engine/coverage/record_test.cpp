// Past days from a gauge's record: each local day once, gaps told, and what could be fished on them.
#include <gmock/gmock.h>

#include "engine/coverage/days_of_record.hpp"
#include "engine/coverage/reach_days.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

constexpr const char* kZone = "America/Denver";

std::chrono::sys_days date(int year, int month, int day) {
  return std::chrono::year{year} / month / day;
}

// Readings at every full hour from one instant to another, each as many m3/s as hours since the first.
Series<Discharge> hourly(Instant from, Instant to) {
  Series<Discharge> rows;
  for (Instant t = from; t <= to; t += std::chrono::hours{1}) {
    rows.times.push_back(t);
    rows.values.push_back(cubic_metres_per_second(static_cast<double>((t - from) / std::chrono::hours{1})));
  }
  return rows;
}

// Clocks there went forward on 14 March 2027 and back on 7 November 2027 (rule of the United States since 2007: second
// Sunday of March, first of November), so that those days had 23 and 25 hours: means of 0..22 and 0..24.
TEST(DaysOfRecord, AreLocalDaysOf23And25HoursToo) {
  const auto spring = hourly(Instant{date(2027, 3, 14)} + std::chrono::hours{7}, Instant{date(2027, 3, 15)} + std::chrono::hours{5});
  const auto spring_days = days_of_record({}, spring, kZone);
  ASSERT_EQ(spring_days.size(), 1u);
  EXPECT_EQ(spring_days.times[0], Instant{date(2027, 3, 14)});
  EXPECT_NEAR(in_cubic_metres_per_second(spring_days.values[0]), 11.0, 1e-9);
  const auto autumn = hourly(Instant{date(2027, 11, 7)} + std::chrono::hours{6}, Instant{date(2027, 11, 8)} + std::chrono::hours{6});
  const auto autumn_days = days_of_record({}, autumn, kZone);
  ASSERT_EQ(autumn_days.size(), 1u);
  EXPECT_NEAR(in_cubic_metres_per_second(autumn_days.values[0]), 12.0, 1e-9);
}

TEST(DaysOfRecord, TakeTheDailyMeanWhereThereIsOneAndNoDayOfTooFewHours) {
  Series<Discharge> daily{{date(2027, 5, 1)}, {cubic_metres_per_second(99)}};
  // From midnight of the 1st to 17:00 of the 2nd: 18 of 24 hours are just enough; to 16:00 they are not.
  const Instant midnight = Instant{date(2027, 5, 1)} + std::chrono::hours{6};
  const auto enough = days_of_record(daily, hourly(midnight, midnight + std::chrono::hours{24 + 17}), kZone);
  ASSERT_EQ(enough.size(), 2u);
  EXPECT_DOUBLE_EQ(in_cubic_metres_per_second(enough.values[0]), 99.0);
  EXPECT_NEAR(in_cubic_metres_per_second(enough.values[1]), 24.0 + 8.5, 1e-9);
  EXPECT_EQ(days_of_record(daily, hourly(midnight, midnight + std::chrono::hours{24 + 16}), kZone).size(), 1u);
}

struct Past {
  River river = small_river();
  Settings settings;
  Tackle tackle = small_tackle();
  Judgement judgement;
  GaugeRecord record;
  void add(std::chrono::sys_days day, double cfs, std::optional<double> water_f = std::nullopt) {
    record.daily_discharge.times.push_back(day);
    record.daily_discharge.values.push_back(cubic_feet_per_second(cfs));
    if (!water_f) return;
    record.daily_temperature.times.push_back(day);
    record.daily_temperature.values.push_back(fahrenheit(*water_f));
  }
  [[nodiscard]] ReachDays walked() const {
    const RiverGraph graph = river_graph(river);
    const RecordedRiver recorded(river, graph, {record});
    return reach_days({river, graph, settings, tackle, judgement, recorded.span()->first, recorded.span()->second}, recorded);
  }
};

// The small river has two reaches above its only gauge, with no areas typed: both carry the gauge's flow.
TEST(ReachDays, CountEachReachOnceADayAndTellTheGaps) {
  Past past;
  past.add(date(2026, 6, 1), 1500.0, 55.0);
  past.add(date(2026, 6, 2), 1600.0);
  past.add(date(2026, 6, 5), 1700.0, 56.0);
  const ReachDays found = past.walked();
  EXPECT_EQ(found.reaches.size(), 2u);
  EXPECT_EQ(found.counted.dates, 5);
  EXPECT_EQ(found.counted.gaps, 2);
  EXPECT_EQ(found.counted.fishable, 6);
  EXPECT_EQ(found.counted.temperature_known, 4);  // two days; the upper reach is 14 km off, the lower one ends at the gauge
  ASSERT_EQ(found.days.size(), 6u);
  EXPECT_NEAR(in_cubic_feet_per_second(found.days[0].flow), 1500.0, 1e-6);
  EXPECT_NEAR(in_cubic_feet_per_second(found.days[5].flow), 1700.0, 1e-6);
}

TEST(ReachDays, LeaveOutWhatTheBoatTheHeatAndAClosureForbid) {
  Past past;
  past.river.boat_limits = {cubic_feet_per_second(1000.0), cubic_feet_per_second(4000.0)};
  Closure closure;
  closure.from = past.river.accesses[0].place;
  closure.to = past.river.accesses[1].place;
  closure.first_day = std::chrono::year{2027} / 3 / 1;
  closure.last_day = std::chrono::year{2027} / 5 / 31;
  past.river.closures = {closure};
  past.add(date(2025, 5, 30), 1500.0, 55.0);  // upper half closed
  past.add(date(2025, 5, 31), 900.0, 55.0);   // upper half closed, lower too thin
  past.add(date(2025, 6, 1), 4100.0, 55.0);   // too high
  past.add(date(2025, 6, 2), 1500.0, 71.0);   // over 70 F
  const ReachDays found = past.walked();
  EXPECT_EQ(found.counted.closed, 2);
  EXPECT_EQ(found.counted.outside_flows, 3);
  EXPECT_EQ(found.counted.too_warm, 2);
  EXPECT_EQ(found.counted.fishable, 1);
}

TEST(ReachDays, HaveTheShareOfTheirHoursInWhichAHatchIsOn) {
  Past past;
  past.settings.earliest_launch = hours(8.0);
  past.settings.latest_off = hours(18.0);
  Hatch hatch;
  hatch.season = {{5, 1}, {6, 30}};
  hatch.hours = {hours(12.0), hours(14.0)};
  hatch.least_temperature = fahrenheit(50.0);
  past.river.hatches = {hatch};
  past.add(date(2026, 6, 1), 1500.0, 55.0);
  past.add(date(2026, 6, 2), 1500.0, 45.0);
  past.add(date(2026, 7, 1), 1500.0, 55.0);
  const ReachDays found = past.walked();
  std::vector<double> lower;
  for (const ReachDay& day : found.days)
    if (day.reach == 1) lower.push_back(day.hatch);
  EXPECT_THAT(lower, testing::ElementsAre(testing::DoubleNear(0.25, 1e-9), 0.0, 0.0));  // 12:00 to 14:00 in half hours: 5 of 20
}

}  // namespace
}  // namespace floatwright
