// What is believed of the river, as `show river` prints it: the same water as the plan's, in four forms.
#include <gmock/gmock.h>

#include <map>
#include <nlohmann/json.hpp>
#include <pugixml.hpp>
#include <sstream>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using nlohmann::json;
using ::testing::AllOf;
using ::testing::HasSubstr;

Ran show_river(const std::filesystem::path& config, std::vector<std::string> more = {}) {
  std::vector<std::string> words{"show", "river", "--config", config.string(), "--offline", "--now", kDemoNow};
  words.insert(words.end(), more.begin(), more.end());
  return floatwright_says(words);
}
const std::filesystem::path kDemo = kRoot / "config/demo";

TEST(ShowRiver, GoesDownTheRiverReachByReachWithinEightyColumns) {
  const auto ran = show_river(kDemo);
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.err, "");
  std::size_t at = 0;
  for (const char* part : {"dam      Heron Dam, ramping", "GAUGES", "REACHES", "Heron Lake  mile 49.0-46.0", "Tailrace  mile 45.6-44.1",
                           "RIFFLE", "Flow: between the gauges heron and ferry", "Long pool", "Cottonwood Channel (side channel)",
                           "The law,"}) {
    const auto next = ran.out.find(part, at);
    ASSERT_NE(next, std::string::npos) << part;
    at = next;
  }
  std::istringstream lines{ran.out};
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80U) << line;
}

TEST(ShowRiver, IsTheGoldenPage) {
  const auto ran = show_river(kDemo);
  const auto golden = kRoot / "fixtures/golden/lantern_river_2027-05-14.txt";
  if (ran.out != text_of(golden)) {
    const auto fresh = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / "lantern_river_2027-05-14.txt";
    write_text(fresh, ran.out);
    FAIL() << "the page differs from " << golden << "; read " << fresh << " aloud, and copy it over if it is better\n"
           << run_program({"/usr/bin/diff", "-u", golden.string(), fresh.string()}).out;
  }
}

TEST(ShowRiver, AsJsonKeepsToItsSchema) {
  EXPECT_EQ(judged_by_schema("river-of-day", show_river(kDemo, {"--as", "json"}).out), "valid");
}

// What a split river loses to its side channel runs in it: checked in the night, when the flow has been steady for hours.
TEST(ShowRiver, LosesNoWaterWhereTheRiverSplits) {
  const auto river = json::parse(show_river(kDemo, {"--as", "json"}).out);
  std::map<std::string, double> at_six;  // m3/s
  for (const auto& reach : river.at("reaches")) {
    const auto& flow = reach.at("hours").at(6).at("discharge_m3_s");
    if (!flow.is_null()) at_six[reach.at("name")] = flow.at("best");
  }
  EXPECT_NEAR(at_six.at("Cottonwood bend") + at_six.at("Cottonwood Channel"), at_six.at("Mill run"), 0.02 * at_six.at("Mill run"));
}

TEST(ShowRiver, TellsEachChangeOfTheDamLaterFartherDown) {
  const auto river = json::parse(show_river(kDemo, {"--as", "json"}).out);
  const auto& changes = river.at("dam_changes");
  ASSERT_GT(changes.size(), 8U);
  for (std::size_t i = 0; i < changes.size(); ++i) {
    EXPECT_LE(changes[i].at("earliest"), changes[i].at("expected"));
    EXPECT_LE(changes[i].at("expected"), changes[i].at("latest"));
    if (i > 0 && changes[i].at("leaves") == changes[i - 1].at("leaves")) {
      EXPECT_GE(changes[i].at("expected"), changes[i - 1].at("expected"));
    }
  }
}

TEST(ShowRiver, AsGeoJsonPutsLongitudeFirstAndLosesNoReach) {  // RFC 7946, section 3.1.1
  const auto map = json::parse(show_river(kDemo, {"--as", "geojson"}).out);
  EXPECT_EQ(map.at("type"), "FeatureCollection");
  std::size_t lines = 0, unplaced = 0;
  for (const auto& feature : map.at("features")) {
    const auto& properties = feature.at("properties");
    if (properties.at("name") == "Heron Ramp") {
      EXPECT_EQ(feature.at("geometry").at("coordinates"), json::parse("[-111.302, 45.112]"));
    }
    if (properties.at("kind") != "reach") continue;
    const auto& shape = feature.at("geometry");
    unplaced += shape.is_null() ? 1U : 0U;
    lines += !shape.is_null() && shape.at("type") == "LineString" ? 1U : 0U;
    EXPECT_GE(properties.at("hours").size(), 23U);
  }
  EXPECT_GE(lines, 12U);
  EXPECT_GE(unplaced, 1U) << "the lake lies above the topmost access";
}

TEST(ShowRiver, AsSvgIsAPictureWithEveryHazardsWholeWords) {
  ScratchFolder scratch;
  const auto ran = show_river(kDemo, {"--as", "svg", "--out", scratch.path().string()});
  EXPECT_EQ(ran.out, "");
  pugi::xml_document picture;
  ASSERT_TRUE(picture.load_string(text_of(scratch.path() / "river.svg").c_str()));
  std::string words;
  for (const auto& text : picture.select_nodes("//text")) words += std::string{text.node().text().get()} + " ";
  EXPECT_THAT(words, AllOf(HasSubstr("Heron Dam"), HasSubstr("Alder Creek"), HasSubstr("PORTAGE RIGHT.")));
}

TEST(ShowRiver, SaysWhatIsMissingAndEndsAsThePlanDoes) {
  const DemoCopy demo;
  std::filesystem::remove_all(demo.payloads());
  std::filesystem::create_directory(demo.payloads());
  const auto ran = show_river(demo.config());
  EXPECT_EQ(ran.exit_code, 69);
  EXPECT_THAT(ran.out, HasSubstr("no gauge"));
  EXPECT_THAT(ran.out, HasSubstr("?"));
}

}  // namespace
}  // namespace floatwright::testing
