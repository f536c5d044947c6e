// Payloads that are not what they should be: the rest of the gauges still make a plan, which says what is missing.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

const char* const kFerry = "usgs-water-data_00000003.json";

class BrokenPayload : public ::testing::TestWithParam<std::string> {};

TEST_P(BrokenPayload, LosesOneGaugeAndNotThePlan) {
  const DemoCopy demo;
  write_text(demo.payloads() / kFerry, GetParam());
  const auto ran = demo.plan();
  EXPECT_EQ(ran.exit_code, 75) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("ferry"));
  EXPECT_THAT(ran.out, HasSubstr("FLOAT"));
}

std::string cut_in_half() {
  const auto whole = text_of(kRoot / "fixtures/lantern/payloads" / kFerry);
  return whole.substr(0, whole.size() / 2);
}

INSTANTIATE_TEST_SUITE_P(BadPayloads, BrokenPayload,
                         ::testing::Values("", "<!DOCTYPE html><html><body>moved</body></html>", cut_in_half(), "{\"features\": 7}",
                                           std::string(10000, '['), "{\"type\":\"FeatureCollection\",\"features\":[]}",
                                           "{\"error\":{\"code\":\"OVER_RATE_LIMIT\",\"message\":\"too many\"}}", "\xff\xfe\x00"));

TEST(BadPayloads, WithNoReadingAtAllMakeNoPlan) {
  const DemoCopy demo;
  for (const auto& file : std::filesystem::directory_iterator(demo.payloads())) std::filesystem::remove(file.path());
  const auto ran = demo.plan();
  EXPECT_EQ(ran.exit_code, 69) << ran.out;
  EXPECT_THAT(ran.err, HasSubstr("no reading"));
  EXPECT_THAT(ran.out, HasSubstr("NO PLAN"));
  std::string out = ran.out;  // a boat may still be carried to the RIGHT
  for (std::size_t at = 0; (at = out.find("RIGHT", at)) != std::string::npos;) out.erase(at, 5);
  EXPECT_THAT(out, ::testing::Not(HasSubstr("RIG")));
}

TEST(BadPayloads, WithoutTheirDirectoryAreAMistakeInTheSettings) {
  const DemoCopy demo;
  std::filesystem::remove_all(demo.payloads());
  const auto ran = demo.plan();
  EXPECT_EQ(ran.exit_code, 78);
  EXPECT_THAT(ran.err, HasSubstr("payloads"));
}

TEST(BadPayloads, OfAThermometerThatStoppedLeaveTheTemperatureUnknown) {
  const DemoCopy demo;
  for (const auto& entry : std::filesystem::directory_iterator(demo.payloads())) {
    auto text = text_of(entry.path());
    for (std::size_t at = 0; (at = text.find("00010", at)) != std::string::npos;) text.replace(at, 5, "00095");
    write_text(entry.path(), text);
  }
  const auto plan = nlohmann::json::parse(demo.plan({"--as", "json"}).out);
  for (const auto& reach : plan.at("stretches").at(0).at("reaches")) EXPECT_TRUE(reach.at("water_temperature_c").is_null());
}

}  // namespace
}  // namespace floatwright::testing
