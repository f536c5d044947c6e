// The services of the Water Survey of Canada: recorded answers (fixtures/recorded/wsc) read off by hand, and what they
// may send besides.
#include <gmock/gmock.h>

#include <algorithm>

#include "tests/adapters/in/gauges/holds.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr auto kQ = Variable::Flow;
constexpr auto kH = Variable::GaugeHeight;
constexpr auto kT = Variable::WaterTemperature;

GaugeAnswer answer_of(const std::string& file) { return read_or_tell(recorded("wsc/" + file), file); }

// The header as the service sends it, and invented rows under it.
std::string realtime(const std::string& rows) {
  return recorded("wsc/wsc_realtime_ws_08MF005_empty_header_only.csv") + "\r\n" + rows;
}
std::string datamart(const std::string& rows) {
  const std::string whole = recorded("wsc/datamart_hourly_02KF005_2026-09-30.csv");
  return whole.substr(0, whole.find('\n') + 1) + rows;
}

TEST(WscRealtime, RecordedStageIsReadWhole) {
  const auto answer = answer_of("wsc_realtime_ws_08MF005_stage46_2025-10-21_22.csv");
  EXPECT_EQ(answer.series.size(), 1u);
  expect_holds(answer,
               {"wsc:08MF005", "46", kH, false, 576, 0, "2025-10-21T00:00:00Z", 3.550, "2025-10-22T23:55:00Z", 3.555});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional}));
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(WscRealtime, TheHeaderAloneIsAnAnswerWithoutReadings) {
  const auto answer = answer_of("wsc_realtime_ws_08MF005_empty_header_only.csv");
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(WscRealtime, TemperatureIsParameter5AndOthersAreToldOnce) {
  const auto answer = read_or_tell(realtime("08MF005,2025-10-21T00:00:00Z,5,9.81,,,Final/Final,,\r\n"
                                            "08MF005,2025-10-21T00:00:00Z,18,3.2,,,,,\r\n"
                                            "08MF005,2025-10-21T00:05:00Z,18,3.2,,,,,"),
                                   "a.csv");
  expect_holds(answer,
               {"wsc:08MF005", "5", kT, false, 1, 0, "2025-10-21T00:00:00Z", 9.81, "2025-10-21T00:00:00Z", 9.81});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Approved}));
  EXPECT_THAT(answer.notes, ElementsAre("parameter 18: 2 rows left out: it is not used here"));
}

TEST(WscRealtime, AnEmptyValueIsMissingWithItsMarksAndUnknownCodesAreKept) {
  const auto answer = read_or_tell(realtime("08MF005,2025-01-21T00:00:00Z,47,,,B,Provisional/Provisoire,10,\r\n"
                                            "08MF005,2025-01-21T00:05:00Z,47,12.5,,E,Provisional/Provisoire,99,\r\n"),
                                   "a.csv");
  const GaugeSeries series = series_in(answer, "47");
  EXPECT_FALSE(series.readings.at(0).si);
  EXPECT_EQ(series.readings[0].marks, (Marks{Mark::Provisional, Mark::Ice}));
  EXPECT_EQ(series.readings.at(1).marks, (Marks{Mark::Provisional, Mark::Estimated, Mark::Unknown}));
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("99")));
}

TEST(WscRealtime, ARowCutShortIsLeftOutAndTold) {
  const std::string whole = recorded("wsc/wsc_realtime_ws_08MF005_stage46_2025-10-21_22.csv");
  const auto answer = read_or_tell(whole.substr(0, whole.size() - 20), "a.csv");
  EXPECT_EQ(answer.series.at(0).readings.size(), 575u);
  EXPECT_THAT(answer.doubts, ElementsAre("rows: 1 row left out: 7 fields where the header has 9 (first at line 577)"));
}

TEST(WscRealtime, WhatIsNoNumberOrNoTimeIsToldWithItsLine) {
  const auto answer = read_or_tell(realtime("08MF005,2025-10-21T00:00:00Z,46,\"3,55\",,,,,\r\n"
                                            "08MF005,2025-10-21 00:05,46,3.5,,,,,\r\n"),
                                   "a.csv");
  EXPECT_THAT(series_in(answer, "46").readings, IsEmpty());
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("the value \"3,55\" is not a finite number (first at line 2)")));
  EXPECT_THAT(answer.doubts,
              Contains(HasSubstr("the time can't be read, first \"2025-10-21 00:05\" (first at line 3)")));
}

TEST(WscRealtime, AWebPageOrAnotherHeaderIsAFailure) {
  const auto page = read_payload("<!DOCTYPE html><html>", "a.csv", "wsc-realtime");
  ASSERT_FALSE(page);
  EXPECT_THAT(page.error().what, HasSubstr("a.csv: a web page or XML, not CSV"));
  const auto other = read_payload("ID,Date,Level\n", "a.csv", "wsc-realtime");
  ASSERT_FALSE(other);
  EXPECT_THAT(other.error().what, HasSubstr("a.csv: line 1: no column \"Parameter\" in the header"));
}

TEST(WscDatamart, RecordedHoursAreReadInUtc) {
  const auto both = answer_of("datamart_hourly_02KF005_2026-09-30.csv");
  EXPECT_EQ(both.series.size(), 2u);
  expect_holds(
      both, {"wsc:02KF005", "level", kH, false, 6, 0, "2026-09-30T20:10:00Z", 57.754, "2026-09-30T20:35:00Z", 57.753});
  expect_holds(both,
               {"wsc:02KF005", "discharge", kQ, false, 6, 0, "2026-09-30T20:10:00Z", 512, "2026-09-30T20:35:00Z", 511});
  EXPECT_EQ(both.series.at(1).readings.at(0).marks, (Marks{Mark::Provisional}));

  const auto flow_only = answer_of("datamart_hourly_05RE001_discharge_only_2026-09-30.csv");
  EXPECT_EQ(flow_only.series.size(), 1u);
  expect_holds(flow_only, {"wsc:05RE001", "discharge", kQ, false, 6, 0, "2026-09-30T19:50:00Z", 24.5,
                           "2026-09-30T20:15:00Z", 25.0});
}

// Found by the fuzzer; what is kept must be text, since JSON is made of it.
TEST(WscRealtime, BytesThatAreNoTextAreShownAsSuch) {
  const auto odd = read_or_tell(realtime("08MF005,2025-10-21T00:00:00Z,46,3.550,,,Provisio\xA4,,"), "a.csv");
  EXPECT_THAT(odd.series.at(0).unknown_codes, ElementsAre("Provisio\\xA4"));
  const auto nobodys = read_or_tell(datamart("02\xF3" "F005,2026-09-30T15:35:00-05:00,57.753,,,1,511,,,1\n"), "a.csv");
  EXPECT_EQ(nobodys.series.at(0).station, "wsc:02\\xF3F005");
}

TEST(WscDatamart, AReversedFlowIsKeptAsSentAndAnIcySymbolMarked) {
  const auto answer = read_or_tell(datamart("05RE001,2026-09-30T13:50:00-06:00,,,,,-1.5,,B,4\n"), "a.csv");
  const Reading row = series_in(answer, "discharge").readings.at(0);
  EXPECT_DOUBLE_EQ(row.si.value(), -1.5);
  EXPECT_EQ(row.marks, (Marks{Mark::Approved, Mark::Ice}));
}

TEST(WscDatamart, AnotherHeaderIsAFailure) {
  const auto other = read_payload(" ID,Date,Water Level / Niveau d'eau (ft),Grade\n", "a.csv");
  ASSERT_FALSE(other);
  EXPECT_THAT(other.error().what, HasSubstr("a.csv: line 1: 10 columns are read"));
}

TEST(WscGeomet, RecordedDaysAreReadAsWrittenBeforeSinglePrecision) {
  const auto answer = answer_of("geomet_hydrometric-daily-mean_02GA010_2020-01.json");
  EXPECT_EQ(answer.series.size(), 2u);
  expect_holds(answer, {"wsc:02GA010", "daily-mean:LEVEL", kH, true, 3, 0, "2020-01-01T00:00:00Z", 3.865,
                        "2020-01-03T00:00:00Z", 3.565});
  expect_holds(answer, {"wsc:02GA010", "daily-mean:DISCHARGE", kQ, true, 3, 0, "2020-01-01T00:00:00Z", 31.0,
                        "2020-01-03T00:00:00Z", 15.3});
  EXPECT_EQ(series_in(answer, "daily-mean:DISCHARGE").readings.at(1).si, 19.3);
  EXPECT_EQ(series_in(answer, "daily-mean:LEVEL").station_name, "NITH RIVER NEAR CANNING");
  EXPECT_FALSE(answer.next);
}

// As public clients describe the collection hydrometric-realtime; no answer is recorded.
std::string instant_feature(const std::string& rest) {
  return R"({"type":"Feature","properties":{"STATION_NUMBER":"08MF005","DATETIME":"2026-09-30T19:50:00Z",)"
         R"("DATETIME_LST":"2026-09-30T11:50:00-08:00",)" +
         rest + "}}";
}

TEST(WscGeomet, InstantsAreReadWithTheirSymbolsAndTheNextPageIsNamed) {
  const auto service = std::find_if(gauge_services().begin(), gauge_services().end(),
                                    [](const GaugeService& s) { return s.name == "wsc-geomet"; });
  const auto answer = service->read(
      features(
          instant_feature(
              R"("LEVEL":null,"DISCHARGE":-0.30000001192092896,"DISCHARGE_SYMBOL_EN":"Ice","LEVEL_SYMBOL_EN":null)"),
          R"(,"links":[{"rel":"self","href":"/a"},{"rel":"next","href":"/items?offset=10"}])"),
      "a");
  ASSERT_TRUE(answer);
  ASSERT_EQ(answer->series.size(), 1u);
  EXPECT_EQ(answer->series[0].series_id, "realtime:DISCHARGE");
  EXPECT_EQ(answer->series[0].readings.at(0).time, *instant_in("2026-09-30T19:50:00Z"));
  EXPECT_EQ(answer->series[0].readings[0].si, -0.3);
  EXPECT_EQ(answer->series[0].readings[0].marks, (Marks{Mark::Ice}));
  EXPECT_EQ(answer->next, "/items?offset=10");
}

TEST(WscGeomet, StationsAreNoReadings) {
  const auto answer =
      read_payload(features(R"({"properties":{"STATION_NUMBER":"08MF005","STATION_NAME":"X"}})"), "a.json");
  ASSERT_FALSE(answer);
  EXPECT_THAT(answer.error().what, HasSubstr("the features are no readings"));
}

}  // namespace
}  // namespace floatwright
