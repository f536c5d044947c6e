// The services of England's Environment Agency: recorded answers (fixtures/recorded/ea) read off by hand; of the
// flood-monitoring service none is recorded: its shape and measure names are as its clients' tests quote them.
#include <gmock/gmock.h>

#include "adapters/in/gauges/ea_flood/measure.hpp"
#include "adapters/in/gauges/ea_hydrology/measure.hpp"
#include "tests/adapters/in/gauges/holds.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr auto kQ = Variable::Flow;
constexpr auto kH = Variable::GaugeHeight;

const std::string kPolsonBridge = "3c5cba29-2321-4289-a1fd-c355e135f4cb";

std::string flood(const std::string& items) {
  return R"({"@context":"http://environment.data.gov.uk/flood-monitoring/meta/context.jsonld","items":[)" + items +
         "]}";
}
std::string item(const std::string& measure, const std::string& rest) {
  return R"({"measure":"http://environment.data.gov.uk/flood-monitoring/id/measures/)" + measure +
         R"(","dateTime":"2015-12-10T16:00:00Z")" + rest + "}";
}
std::string hydrology(const std::string& rest) {
  return R"({"meta":{"@id":"http://environment.data.gov.uk/hydrology/id/measures"},"items":[{"measure":{"@id":"http://environment.data.gov.uk/hydrology/id/measures/)" +
         kPolsonBridge + R"(-flow-i-900-m3s-qualified"},)" + rest + "}]}";
}

TEST(EaFlood, QuantityStationAndUnitComeFromTheMeasuresName) {
  const auto stage = ea_flood_measure("690140-level-stage-i-15_min-m");
  EXPECT_EQ(stage->station, "690140");
  EXPECT_EQ(stage->variable, kH);
  EXPECT_EQ(stage->unit, "m");
  const auto flow = ea_flood_measure("3400TH-flow--Mean-15_min-m3_s");
  EXPECT_EQ(flow->variable, kQ);
  EXPECT_EQ(flow->unit, "m3_s");
  const auto tidal = ea_flood_measure("E73639-anglian-level-tidal_level-Mean-15_min-mAOD");
  EXPECT_EQ(tidal->station, "E73639-anglian");
  EXPECT_EQ(tidal->sensor, "tidal_level, mAOD");
  EXPECT_EQ(ea_flood_measure("L2011-level-stage-i-15_min----")->unit, "---");
  EXPECT_FALSE(ea_flood_measure("7071-level-downstage-i-15_min-mASD")->variable);
  for (const char* name : {"", "690140", "-level-stage-i-15_min-m", "690140-level-stage-i", "690140-level-"})
    EXPECT_FALSE(ea_flood_measure(name)) << name;
}

TEST(EaFlood, ReadsAreInSiAndProvisional) {
  const auto answer = read_or_tell(flood(item("690140-level-stage-i-15_min-m", R"(,"value":0.754)") + "," +
                                         item("690140-flow-logged-i-15_min-m3_s", R"(,"value":-2.5)")),
                                   "a.json");
  EXPECT_THAT(answer.series, SizeIs(2));
  expect_holds(answer, {"ea:690140", "690140-level-stage-i-15_min-m", kH, false, 1, 0, "2015-12-10T16:00:00Z", 0.754,
                        "2015-12-10T16:00:00Z", 0.754});
  EXPECT_EQ(series_in(answer, "690140-flow-logged-i-15_min-m3_s").readings.at(0).si, -2.5);
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional}));
}

TEST(EaFlood, AValueMayBeMissingButNotSeveral) {
  const auto answer = read_or_tell(flood(item("690140-level-stage-i-15_min-m", "") + "," +
                                         item("690141-level-stage-i-15_min-m", R"(,"value":[1.1,1.2])")),
                                   "a.json");
  EXPECT_FALSE(series_in(answer, "690140-level-stage-i-15_min-m").readings.at(0).si);
  EXPECT_THAT(series_in(answer, "690141-level-stage-i-15_min-m").readings, IsEmpty());
  EXPECT_THAT(answer.doubts,
              ElementsAre(HasSubstr("measure 690141-level-stage-i-15_min-m: 1 row left out: the value")));
}

TEST(EaFlood, DeadUnitsAreADoubtAndOtherWatersANote) {
  const auto answer = read_or_tell(flood(item("L2011-level-stage-i-15_min----", R"(,"value":7)") + "," +
                                         item("7071-level-downstage-i-15_min-mASD", R"(,"value":7)") + "," +
                                         item("3680-rainfall-tipping_bucket_raingauge-t-15_min-mm", R"(,"value":7)")),
                                   "a.json");
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("measure L2011-level-stage-i-15_min----: 1 row left out: the unit "
                                                   "\"---\" is not known")));
  EXPECT_THAT(answer.notes, Contains("level downstage of station 7071: 1 row left out: it is not used here"));
}

TEST(EaHydrology, RecordedDailyFlowsAreKeptUnderTheirWaterDay) {
  const auto answer = read_or_tell(recorded("ea/ea_hydrology_readings_flow_daily_2024-01.json"), "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  expect_holds(answer, {"ea:" + kPolsonBridge, kPolsonBridge + "-flow-m-86400-m3s-qualified", kQ, true, 31, 0,
                        "2024-01-01T00:00:00Z", 72.777, "2024-01-31T00:00:00Z", 7.57});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Approved}));
  EXPECT_THAT(answer.notes, Contains(HasSubstr("water day, from 09:00 GMT")));
}

TEST(EaHydrology, RecordedMeasuresHoldNoReadingsAndSayWhatCanBeAskedFor) {
  const auto answer = read_or_tell(recorded("ea/ea_hydrology_measures_station.json"), "a.json");
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, SizeIs(7));
  EXPECT_THAT(answer.notes,
              Contains("measure flow-i-900-m3s-qualified can be asked for (15min "
                       "Flow (m3/s) time series for Polson Bridge); a list of measures holds no readings"));
}

TEST(EaHydrology, TimesWithoutAZoneAreGmtAndQualityIsAMark) {
  const struct {
    std::string rest;
    std::optional<double> si;
    Marks marks;
  } rows[]{{R"("value":1.5,"quality":"Unchecked")", 1.5, {Mark::Provisional}},
           {R"("value":1.5,"quality":"Estimated")", 1.5, {Mark::Estimated}},
           {R"("quality":"Missing")", std::nullopt, {Mark::Unavailable}},
           {R"("value":1.5,"quality":"Suspect")", 1.5, {Mark::Unknown}}};
  for (const auto& row : rows) {
    const auto answer =
        read_or_tell(hydrology(R"("date":"2024-07-01","dateTime":"2024-07-01T12:15:00",)" + row.rest), "a.json");
    ASSERT_THAT(answer.series, SizeIs(1));
    EXPECT_FALSE(answer.series[0].daily);
    EXPECT_EQ(answer.series[0].readings.at(0).time, *instant_in("2024-07-01T12:15:00Z"));
    EXPECT_EQ(answer.series[0].readings[0].si, row.si);
    EXPECT_EQ(answer.series[0].readings[0].marks, row.marks) << row.rest;
  }
}

}  // namespace
}  // namespace floatwright
