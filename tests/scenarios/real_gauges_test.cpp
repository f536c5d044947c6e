// A plan from the recorded answer of two real gauges: USGS 01541000 and 01570500, 1 June 2018, legacy JSON (public domain;
// fixtures/recorded/two_gauges). The notes are invented. Expected numbers were read off the payload by hand:
//   01541000 discharge 2540 ft3/s at 00:00, 1090 at 23:45 (15 minutes); 01570500 42200 at 00:00, 36900 at 23:30 (30 minutes);
//   01570500 temperature in the second sensor block ("WALNUT ST PIER"; the first is empty), 22.1 C at 00:00, 24.4 at 23:45.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

constexpr double kCubicMetresPerCubicFoot = 0.028316846592;

Ran two_gauges(std::vector<std::string> more) {
  std::vector<std::string> words{"plan", "--config", (kRoot / "fixtures/recorded/two_gauges").string(), "--offline",
                                 "--now", "2018-06-01T23:50:00-04:00"};
  words.insert(words.end(), more.begin(), more.end());
  return floatwright_says(words);
}

nlohmann::json plan() { return nlohmann::json::parse(two_gauges({"--as", "json"}).out); }

nlohmann::json reading(const nlohmann::json& plan, const std::string& gauge, const std::string& quantity) {
  for (const auto& row : plan.at("readings")) {
    if (row.at("gauge") == gauge && row.at("quantity") == quantity) return row;
  }
  return nullptr;
}

const nlohmann::json& stretch(const nlohmann::json& plan, const std::string& from, const std::string& to) {
  for (const auto& row : plan.at("stretches")) {
    if (row.at("from") == from && row.at("to") == to) return row;
  }
  throw std::runtime_error("no stretch " + from + " to " + to);
}

TEST(TwoRealGauges, ShowTheNewestReadingOfEachAndWhen) {
  const auto made = plan();
  const auto upper = reading(made, "upper", "discharge");
  EXPECT_NEAR(upper.at("value"), 1090 * kCubicMetresPerCubicFoot, 1e-6);
  EXPECT_EQ(upper.at("read_at"), "2018-06-02T03:45:00Z");
  EXPECT_EQ(upper.at("age_s"), 300);
  const auto lower = reading(made, "lower", "discharge");
  EXPECT_NEAR(lower.at("value"), 36900 * kCubicMetresPerCubicFoot, 1e-6);
  EXPECT_EQ(lower.at("read_at"), "2018-06-02T03:30:00Z");
}

TEST(TwoRealGauges, TakeTheTemperatureFromTheSecondSensorBlock) {
  const auto row = reading(plan(), "lower", "water_temperature");
  EXPECT_NEAR(row.at("value"), 24.4, 1e-9);
  EXPECT_EQ(row.at("read_at"), "2018-06-02T03:45:00Z");
  EXPECT_TRUE(reading(plan(), "upper", "water_temperature").is_null()) << "that gauge has no thermometer";
}

// 01541000 falls: r6 = ln(1090/1260) over 6 h = -0.145, held to -0.5; at 12 h the fall fades to 0.60 of it and at 6 h to 0.40,
// so tomorrow noon (12 h on) the middle case at the gauge is 1090 exp(-0.60 x 0.145) = 999 ft3/s; the reach that ends a
// fifth of a mile above the gauge has the same water but for minutes. Launch is in the morning: between 6 and 12 h on.
TEST(TwoRealGauges, LetAFallFadeAtTheUpperGauge) {
  const auto made = plan();
  const auto& reach = stretch(made, "north", "weir").at("reaches").at(0);
  const double best = reach.at("discharge_m3_s").at("best").get<double>() / kCubicMetresPerCubicFoot;
  EXPECT_GT(best, 1090 * std::exp(-0.60 * 0.16));
  EXPECT_LT(best, 1090 * std::exp(-0.40 * 0.13));
  EXPECT_LT(reach.at("discharge_m3_s").at("low"), reach.at("discharge_m3_s").at("best"));
  EXPECT_GT(reach.at("discharge_m3_s").at("high"), reach.at("discharge_m3_s").at("best"));
}

TEST(TwoRealGauges, LeaveTheTemperatureUnknownFarFromAThermometer) {
  const auto made = plan();
  EXPECT_TRUE(stretch(made, "north", "weir").at("reaches").at(0).at("water_temperature_c").is_null());
  EXPECT_FALSE(stretch(made, "elm", "stone").at("reaches").at(0).at("water_temperature_c").is_null());
}

TEST(TwoRealGauges, StopTheFishingInWaterOf24Degrees) {
  const auto made = plan();
  bool heat = false;
  for (const auto& where : {made.at("cautions"), stretch(made, "elm", "stone").value("cautions", nlohmann::json::array())}) {
    for (const auto& caution : where) heat = heat || caution.at("what") == "heat_stop";
  }
  EXPECT_TRUE(heat) << "21.1 C (70 F) is passed all day at the lower gauge";
}

TEST(TwoRealGauges, GiveTimesOnTheRiversClock) {
  const auto made = plan();
  EXPECT_EQ(made.at("time_zone"), "America/New_York");
  EXPECT_EQ(made.at("day"), "2018-06-02");
  EXPECT_EQ(two_gauges({}).exit_code, 0);
}

}  // namespace
}  // namespace floatwright::testing
