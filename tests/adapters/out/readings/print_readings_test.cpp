#include "adapters/out/readings/print_readings.hpp"

#include <gmock/gmock.h>

#include <limits>
#include <nlohmann/json.hpp>

namespace floatwright {
namespace {

using nlohmann::json;

const Instant kNoon = std::chrono::sys_days{std::chrono::year{2026} / 5 / 13} + std::chrono::hours{12};

GaugeSeries series_of(Variable variable, std::vector<Reading> readings) {
  GaugeSeries out;
  out.station = "usgs:00000001";
  out.series_id = "USGS:00000001:00060:00000:7";
  out.variable = variable;
  out.readings = std::move(readings);
  return out;
}

GaugeAnswer two_rows() {
  GaugeAnswer answer;
  answer.series = {series_of(Variable::Flow, {{kNoon, 52.4, {Mark::Approved, Mark::Estimated}},
                                              {kNoon + std::chrono::minutes{15}, {}, {Mark::Provisional, Mark::Ice}}})};
  answer.notes = {"series X: 1 row sent twice, dropped"};
  return answer;
}

TEST(ReadingsAsCsv, AreOneRowEachUnderAHeader) {
  EXPECT_EQ(readings_csv(two_rows()),
            "series,station,quantity,time,value,unit,marks\n"
            "USGS:00000001:00060:00000:7,usgs:00000001,discharge,2026-05-13T12:00:00Z,52.4,m3/s,approved estimated\n"
            "USGS:00000001:00060:00000:7,usgs:00000001,discharge,2026-05-13T12:15:00Z,,m3/s,provisional ice\n");
}

TEST(ReadingsAsCsv, QuoteWhatWouldBreakARow) {
  GaugeAnswer answer = two_rows();
  answer.series[0].series_id = "a,\"b\"";
  EXPECT_THAT(readings_csv(answer), testing::HasSubstr("\n\"a,\"\"b\"\"\",usgs:00000001,"));
}

TEST(ReadingsAsJson, HaveTheSameColumnsWithNullForMissing) {
  const json read = json::parse(readings_json(two_rows()));
  EXPECT_EQ(read["kind"], "readings");
  EXPECT_EQ(read["schema_version"], 1);
  ASSERT_EQ(read["readings"].size(), 2u);
  EXPECT_EQ(read["readings"][0], json::parse(R"({"series":"USGS:00000001:00060:00000:7","station":"usgs:00000001",
    "quantity":"discharge","time":"2026-05-13T12:00:00Z","value":52.4,"unit":"m3/s","marks":["approved","estimated"]})"));
  EXPECT_TRUE(read["readings"][1]["value"].is_null());
  EXPECT_EQ(read["readings"][1]["marks"], json({"provisional", "ice"}));
  EXPECT_EQ(read["notes"], json({"series X: 1 row sent twice, dropped"}));
}

TEST(ReadingsAsJson, ReadBackAsTheVeryNumber) {
  const double values[] = {0.1 + 0.2, 63.1466678999, 1e-7, 402000.0 * 0.028316846592};
  for (const double value : values) {
    GaugeAnswer answer;
    answer.series = {series_of(Variable::GaugeHeight, {{kNoon, value, {}}})};
    EXPECT_EQ(json::parse(readings_json(answer))["readings"][0]["value"].get<double>(), value);
    EXPECT_EQ(std::stod(readings_csv(answer).substr(readings_csv(answer).find("Z,") + 2)), value);
  }
}

TEST(ReadingsAsJson, NameEachQuantityWithItsUnit) {
  const std::vector<std::tuple<Variable, std::string, std::string>> table{
      {Variable::Flow, "discharge", "m3/s"},
      {Variable::GaugeHeight, "stage", "m"},
      {Variable::WaterTemperature, "water_temperature", "degC"},
      {Variable::Clarity, "turbidity", "FNU"}};
  for (const auto& [variable, quantity, unit] : table) {
    GaugeAnswer answer;
    answer.series = {series_of(variable, {{kNoon, 1.0, {}}})};
    const json row = json::parse(readings_json(answer))["readings"][0];
    EXPECT_EQ(row["quantity"], quantity);
    EXPECT_EQ(row["unit"], unit);
  }
}

TEST(ReadingsAsJson, MarkADailyRowSinceItsTimeIsADate) {
  GaugeAnswer answer = two_rows();
  answer.series[0].daily = true;
  EXPECT_EQ(json::parse(readings_json(answer))["readings"][0]["marks"], json({"approved", "estimated", "daily"}));
}

TEST(ReadingsAsJson, AreAnEmptyListForAnEmptyAnswer) {
  EXPECT_EQ(json::parse(readings_json({}))["readings"], json::array());
  EXPECT_EQ(readings_csv({}), "series,station,quantity,time,value,unit,marks\n");
}

TEST(ReadingsAsJson, NeverHoldANumberThatIsNone) {
  GaugeAnswer answer;
  answer.series = {series_of(Variable::Flow, {{kNoon, std::numeric_limits<double>::infinity(), {}}})};
  EXPECT_TRUE(json::parse(readings_json(answer))["readings"][0]["value"].is_null());
  EXPECT_THAT(readings_csv(answer), testing::HasSubstr("Z,,m3/s"));
}

TEST(ReadingsAsJson, AreValidTextEvenWhereANameIsNot) {
  GaugeAnswer answer = two_rows();
  answer.series[0].series_id = "\xff\"";
  EXPECT_TRUE(json::accept(readings_json(answer)));
}

}  // namespace
}  // namespace floatwright
