#include "engine/readings/gauge_record.hpp"

#include <gmock/gmock.h>

#include "tests/engine/readings/rows.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

GaugeRecord record_of(const std::vector<GaugeSeries>& all, Instant now = kNoon) {
  return gauge_record("heron", "usgs:00000001", all, "heron.json", now);
}

std::vector<double> flows(const GaugeRecord& record) {
  std::vector<double> out;
  for (const Discharge q : record.discharge.values) out.push_back(q.si());
  return out;
}

TEST(GaugeRecord, HoldsTheUsableRowsInOrder) {
  const auto record = record_of({flow_series("a", {4, 5, 6})});
  EXPECT_THAT(flows(record), ElementsAre(4, 5, 6));
  EXPECT_EQ(record.discharge.times.back(), kNoon);
  EXPECT_THAT(record.left_out, IsEmpty());
  EXPECT_EQ(record.gauge, "heron");
  EXPECT_EQ(record.station, "usgs:00000001");
}

TEST(GaugeRecord, LeavesOutRowsByReasonAndCountsThem) {
  auto series = flow_series("a", {4, -5, 6, 7, 8, 9});
  series.readings[2].marks.insert(Mark::Ice);
  series.readings[3].si.reset();
  series.readings[4].marks.insert(Mark::Backwater);
  const auto record = record_of({series});
  EXPECT_THAT(flows(record), ElementsAre(4, 9));
  EXPECT_THAT(record.left_out, ElementsAre("Not used as flow at heron: 1 row marked backwater, 1 row marked ice, "
                                           "1 row of negative flow, 1 row without a value."));
}

TEST(GaugeRecord, DoesNotReadRowsLaterThanNow) {
  const auto record = record_of({flow_series("a", {4, 5, 6})}, kNoon - kQuarter);
  EXPECT_THAT(flows(record), ElementsAre(4, 5));
  ASSERT_EQ(record.newest.size(), 1u);
  EXPECT_EQ(record.newest[0].time, kNoon - kQuarter);
  EXPECT_THAT(record.left_out, ElementsAre("Not used as flow at heron: 1 row later than now."));
}

TEST(GaugeRecord, ShowsAnIcedNewestReadingAndDoesNotUseIt) {
  auto series = flow_series("a", {4, 5});
  series.readings.back().marks.insert(Mark::Ice);
  const auto record = record_of({series});
  EXPECT_TRUE(record.ice_now);
  EXPECT_THAT(flows(record), ElementsAre(4));
  EXPECT_DOUBLE_EQ(*record.newest[0].si, 5.0);
}

TEST(GaugeRecord, ShowsNoNumberForANegativeNewestFlow) {
  const auto record = record_of({flow_series("a", {4, -5})});
  EXPECT_EQ(record.newest[0].si.why_absent(), "the newest row is of negative flow");
}

TEST(GaugeRecord, MarksANewestReadingOlderThanSixHours) {
  const auto fresh = record_of({flow_series("a", {4})}, kNoon + std::chrono::hours{6});
  EXPECT_FALSE(fresh.newest[0].marks.contains(Mark::Stale));
  const auto stale = record_of({flow_series("a", {4})}, kNoon + std::chrono::hours{6} + std::chrono::seconds{1});
  EXPECT_TRUE(stale.newest[0].marks.contains(Mark::Stale));
}

TEST(GaugeRecord, KeepsASuspectNewestReadingAndMarksIt) {
  const auto record = record_of({flow_series("a", {10, 10, 10, 10, 10, 10, 10, 60})});
  EXPECT_EQ(record.discharge.size(), 8u);
  EXPECT_TRUE(record.newest[0].marks.contains(Mark::SuspectSpike));
  EXPECT_THAT(record.left_out, ElementsAre("Kept, but out of line with the readings around: 1 row of flow at heron."));
}

GaugeSeries daily_flow(std::vector<double> flows) {
  auto series = flow_series("d", {});
  series.daily = true;
  Instant day = std::chrono::floor<std::chrono::days>(kNoon) - std::chrono::days{static_cast<int>(flows.size())};
  for (const double q : flows) series.readings.push_back({day += std::chrono::days{1}, q, {}});
  return series;  // the last day is the one of kNoon, which is not over
}

TEST(GaugeRecord, KeepsDailyMeansApartFromReadings) {
  const auto record = record_of({daily_flow({1, 2, 3}), flow_series("a", {4})});
  EXPECT_EQ(record.discharge.size(), 1u);
  ASSERT_EQ(record.daily_discharge.size(), 2u) << "a day that is not over has no mean";
  EXPECT_DOUBLE_EQ(record.daily_discharge.values.back().si(), 2.0);
  EXPECT_EQ(record.newest.size(), 1u);
  EXPECT_THAT(record.left_out, Contains("Not used as flow at heron: 1 series of daily values, which have dates and "
                                        "no hours."));
}

TEST(GaugeRecord, ShowsTheNewestDailyMeanWhereThereIsNothingElse) {
  const auto record = record_of({daily_flow({1, 2, -5, 3})});
  EXPECT_TRUE(record.discharge.empty());
  ASSERT_EQ(record.newest.size(), 1u);
  EXPECT_DOUBLE_EQ(record.newest[0].si.value(), 2.0);
  EXPECT_EQ(record.newest[0].time, std::chrono::floor<std::chrono::days>(kNoon) - std::chrono::hours{24});
  EXPECT_THAT(record.left_out, ElementsAre("Not used as daily flow at heron: 1 day."));
}

TEST(GaugeRecord, LeavesOutTemperaturesThatRiversDoNotHave) {
  auto series = flow_series("t", {-0.2, 8.5, 60.0});
  series.variable = Variable::WaterTemperature;
  const auto record = record_of({series});
  ASSERT_EQ(record.temperature.size(), 2u);
  EXPECT_DOUBLE_EQ(in_celsius(record.temperature.values[0]), -0.2);
}

TEST(GaugeRecord, TakesOnlyItsOwnStation) {
  auto other = flow_series("x", {99});
  other.station = "usgs:00000002";
  EXPECT_TRUE(record_of({other}).discharge.empty());
}

TEST(GaugeRecord, NamesTheSourceOfTheSeriesAboveTheGeneralOne) {
  auto series = flow_series("a", {4});
  EXPECT_EQ(record_of({series}).newest[0].source, "heron.json");
  series.source = "lantern.json";
  EXPECT_EQ(record_of({series}).newest[0].source, "lantern.json");
}

}  // namespace
}  // namespace floatwright
