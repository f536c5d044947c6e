// The services of the National Weather Service: excerpts of recorded stageflow answers (fixtures/recorded/nwps). Of the
// gridpoint service no answer is recorded: its shape is that of the service's own schema
// (GridpointQuantitativeValueLayer, ISO8601Interval) and of values that its clients' tests quote.
#include <gmock/gmock.h>

#include "adapters/in/gauges/nws_weather/interval.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/holds.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr auto kQ = Variable::Flow;
constexpr auto kH = Variable::GaugeHeight;

double feet(double value) { return stage_feet(value).si(); }
double kcfs(double value) { return cubic_feet_per_second(1000.0 * value).si(); }

TEST(Nwps, RecordedExcerptsAreRead) {
  const auto status = read_or_tell(recorded("nwps/EXCERPT_gauge_FIHM1_2024-03-28.json"), "a.json");
  EXPECT_THAT(status.series, SizeIs(2));  // -999 and year 1 of the forecast are nothing
  expect_holds(status, {"nwps:FIHM1", "observed:stage", kH, false, 1, 0, "2024-03-28T11:45:00Z", feet(4.56),
                        "2024-03-28T11:45:00Z", feet(4.56)});
  expect_holds(status, {"nwps:FIHM1", "observed:flow", kQ, false, 1, 0, "2024-03-28T11:45:00Z", kcfs(1.43),
                        "2024-03-28T11:45:00Z", kcfs(1.43)});

  const auto one = read_or_tell(recorded("nwps/EXCERPT_stageflow_observed_one_point.json"),
                                "https://api/gauges/ABCO3/stageflow/observed");
  EXPECT_THAT(one.series, SizeIs(2));
  expect_holds(one, {"nwps:ABCO3", "observed:stage", kH, false, 1, 0, "2026-06-28T14:45:00Z", feet(5.03),
                     "2026-06-28T14:45:00Z", feet(5.03)});
  expect_holds(one, {"nwps:ABCO3", "observed:flow", kQ, false, 1, 0, "2026-06-28T14:45:00Z", kcfs(20.6),
                     "2026-06-28T14:45:00Z", kcfs(20.6)});

  const auto unsorted = read_or_tell(recorded("nwps/SHAPE_stageflow_ACRT2_trimmed_by_thirdparty_test.json"),
                                     "in/gauges_ACRT2_stageflow.json");
  EXPECT_THAT(unsorted.series, SizeIs(2));
  expect_holds(unsorted, {"nwps:ACRT2", "observed:stage", kH, false, 5, 1, "2026-09-25T18:00:00Z", feet(12.5),
                          "2026-09-25T23:50:00Z", feet(13.04)});
  expect_holds(unsorted, {"nwps:ACRT2", "observed:flow", kQ, false, 5, 1, "2026-09-25T18:00:00Z", kcfs(0.2),
                          "2026-09-25T23:50:00Z", kcfs(0.234)});
  EXPECT_FALSE(unsorted.series.at(0).issued);
}

TEST(Nwps, AForecastOfAFlowPrimaryGaugeIsToldByNamesAndHasItsTimeOfIssue) {
  const auto answer = read_or_tell(
      R"({"forecast":{"data":[{"validTime":"2026-07-29T06:00:00Z","primary":-0.4,"secondary":-9999}],"primaryName":"Flow",)"
      R"("primaryUnits":"kcfs","secondaryName":"Stage","secondaryUnits":"ft","pedts":"QRIFF","issuedTime":"2026-07-28T13:15:00Z"},)"
      R"("observed":{}})",
      "https://api/gauges/ABCO3/stageflow");
  const GaugeSeries flow = series_in(answer, "forecast:flow");
  EXPECT_EQ(flow.issued, instant_in("2026-07-28T13:15:00Z"));
  EXPECT_DOUBLE_EQ(flow.readings.at(0).si.value(), kcfs(-0.4));  // a tide turns the flow round
  EXPECT_FALSE(series_in(answer, "forecast:stage").readings.at(0).si);
  EXPECT_THAT(answer.series, SizeIs(2));
}

TEST(Nwps, NoForecastIsNoSeries) {
  for (const char* forecast :
       {"{}", R"({"primaryName":"","secondaryName":"","primaryUnits":"","secondaryUnits":"","data":[]})"}) {
    const auto answer = read_or_tell(R"({"observed":{},"forecast":)" + std::string{forecast} + "}", "a.json", "nwps");
    EXPECT_THAT(answer.series, IsEmpty());
    EXPECT_THAT(answer.notes, IsEmpty());
  }
}

TEST(Nwps, APoolsElevationIsNoStage) {
  const auto answer =
      read_or_tell(R"({"observed":{"data":[{"validTime":"2026-07-29T06:00:00Z","primary":1080.4,"secondary":2}],)"
                   R"("primaryName":"Elevation","primaryUnits":"ft","secondaryName":"Flow","secondaryUnits":"cfs"}})",
                   "gauges/ABCO3");
  EXPECT_THAT(answer.series, SizeIs(1));
  EXPECT_THAT(answer.notes, Contains("observed \"Elevation\": 1 row left out: it is not used here"));
}

TEST(Nwps, WhatCannotBeReadIsADoubt) {
  const auto answer = read_or_tell(
      R"({"observed":{"data":[{"validTime":"2026-07-29T06:00:00Z","primary":1,"secondary":2}],"primaryName":"Stage","primaryUnits":"fathom",)"
      R"("secondaryName":"Flow","secondaryUnits":"kcfs"},"forecast":{"data":[{"validTime":"2026-07-29T06:00:00Z","primary":1}],)"
      R"("primaryName":"Stage","primaryUnits":"ft","issuedTime":"0001-01-01T00:00:00Z"}})",
      "a.json");
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("observed Stage: 1 row left out: the unit \"fathom\" is not known")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("forecast Stage: 1 row left out: the time of issue can't be read")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("the answer does not name its gauge")));
}

TEST(Nwps, AnErrorIsToldInTheServicesWords) {
  const auto answer = read_payload(R"({"code":5,"message":"gauge not found","details":[]})", "a.json", "nwps");
  ASSERT_FALSE(answer);
  EXPECT_THAT(answer.error().what, HasSubstr("gauge not found"));
}

// ISO 8601-1:2019 durations of days, hours and minutes.
TEST(NwsWeather, IntervalsHaveALengthOrAnEnd) {
  const Instant from = *instant_in("2026-09-22T06:00:00Z");
  const auto length = [&](const std::string& rest) -> std::optional<Period> {
    const auto read = interval_in("2026-09-22T06:00:00+00:00/" + rest);
    if (!read) return std::nullopt;
    EXPECT_EQ(read->from, from);
    return read->to - read->from;
  };
  EXPECT_EQ(length("PT6H"), std::chrono::hours{6});
  EXPECT_EQ(length("P1DT6H"), std::chrono::hours{30});
  EXPECT_EQ(length("P2D"), std::chrono::hours{48});
  EXPECT_EQ(length("PT1H30M"), std::chrono::minutes{90});
  EXPECT_EQ(length("2026-09-22T09:00:00Z"), std::chrono::hours{3});
  for (const char* wrong : {"", "P", "PT", "PT6", "PT0H", "P1M", "PT-1H", "P1DT", "P99999D", "P60D", "PT6H ", "6H"})
    EXPECT_FALSE(length(wrong)) << wrong;
}

std::string grid(const std::string& layers) {
  return R"({"type":"Feature","properties":{"@id":"https://api.weather.gov/gridpoints/TOP/31,80","@type":"wx:Gridpoint",)"
         R"("updateTime":"2026-09-22T05:10:00+00:00","gridId":"TOP","gridX":"31","gridY":80,)" +
         layers + "}}";
}
std::string layer(const std::string& name, const std::string& uom, const std::string& values) {
  return "\"" + name + R"(":{"uom":")" + uom + R"(","values":[)" + values + "]}";
}
std::string value(const std::string& time, const std::string& number) {
  return R"({"validTime":")" + time + R"(","value":)" + number + "}";
}

TEST(NwsWeather, AGridBecomesHourlyRowsInSi) {
  const auto answer = read_or_tell(
      grid(layer("temperature", "wmoUnit:degC",
                 value("2026-09-22T06:00:00+00:00/PT3H", "12.5") + "," +
                     value("2026-09-22T09:00:00+00:00/PT1H", "null")) +
           "," + layer("quantitativePrecipitation", "wmoUnit:mm", value("2026-09-22T06:00:00+00:00/PT6H", "7.62")) +
           "," + layer("windSpeed", "wmoUnit:km_h-1", value("2026-09-22T06:00:00+00:00/PT1H", "18")) + "," +
           layer("dewpoint", "wmoUnit:degC", value("2026-09-22T06:00:00+00:00/PT1H", "8"))),
      "a.json");
  EXPECT_THAT(answer.series, SizeIs(3));
  expect_holds(answer, {"nws:TOP.31.80", "temperature", Variable::AirTemperature, false, 3, 0, "2026-09-22T06:00:00Z",
                        12.5, "2026-09-22T08:00:00Z", 12.5});
  expect_holds(answer, {"nws:TOP.31.80", "precipitation", Variable::Rain, false, 6, 0, "2026-09-22T06:00:00Z", 1.27,
                        "2026-09-22T11:00:00Z", 1.27});
  expect_holds(answer, {"nws:TOP.31.80", "wind", Variable::Wind, false, 1, 0, "2026-09-22T06:00:00Z", 5.0,
                        "2026-09-22T06:00:00Z", 5.0});
  EXPECT_EQ(answer.series.at(0).issued, instant_in("2026-09-22T05:10:00Z"));
}

TEST(NwsWeather, AnUnknownUnitOrIntervalIsADoubt) {
  const auto answer =
      read_or_tell(grid(layer("windSpeed", "wmoUnit:kn", value("2026-09-22T06:00:00+00:00/PT1H", "18")) + "," +
                        layer("temperature", "wmoUnit:degC", value("2026-09-22T06:00:00+00:00/P1M", "18"))),
                   "a.json");
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.doubts,
              Contains(HasSubstr("layer windSpeed: 1 row left out: the unit \"wmoUnit:kn\" is not known")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("layer temperature: 1 row left out: the interval can't be read")));
}

TEST(NwsWeather, APointNamesItsGridAsTheNextPage) {
  const auto all = gauge_services();
  const auto service = std::find_if(all.begin(), all.end(), [](const auto& s) { return s.name == "nws-weather"; });
  const std::string point =
      R"({"properties":{"@id":"https://api.weather.gov/points/39.7456,-97.0892","@type":"wx:Point",)"
      R"("forecastGridData":"https://api.weather.gov/gridpoints/TOP/31,80"}})";
  EXPECT_TRUE(service->recognises(point));
  const auto answer = service->read(point, "a.json");
  ASSERT_TRUE(answer);
  EXPECT_THAT(answer->series, IsEmpty());
  EXPECT_EQ(answer->next, "https://api.weather.gov/gridpoints/TOP/31,80");
}

}  // namespace
}  // namespace floatwright
