// The angler's day at the demo's spot, printed in every way, and how a mistyped spot is told.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Ran at_spot(const std::string& spot, std::vector<std::string> more = {}) {
  std::vector<std::string> words{"plan", "--config", (kRoot / "config/demo").string(), "--offline", "--now", kDemoNow, "--at", spot};
  words.insert(words.end(), more.begin(), more.end());
  return floatwright_says(words);
}

TEST(SpotPlan, IsTheGoldenPage) {
  const auto ran = at_spot("bend");
  const auto golden = kRoot / "fixtures/golden/lantern_bend_2027-05-14.txt";
  EXPECT_EQ(ran.exit_code, 0);
  if (ran.out != text_of(golden)) {
    const auto fresh = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / "lantern_bend_2027-05-14.txt";
    write_text(fresh, ran.out);
    FAIL() << "the page differs from " << golden << "; read " << fresh << " aloud, and copy it over if it is better\n"
           << run_program({"/usr/bin/diff", "-u", golden.string(), fresh.string()}).out;
  }
}

// Words of a boat have no place where somebody wades.
TEST(SpotPlan, NeverSpeaksOfABoatOrAFloat) {
  for (const auto* kind : {"plan", "ashore", "calendar", "map"}) {
    const auto ran = at_spot("bend", {"--as", kind});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    std::string text = ran.out;
    for (std::size_t at; (at = text.find("\r\n ")) != std::string::npos;) text.erase(at, 3);  // unfolded (RFC 5545, 3.1)
    for (const auto* word : {"the boat", "aboard", "aunch", "ut in ", "PUT IN", "ake out", "TAKE OUT", "huttle", "FLOAT "})
      EXPECT_THAT(text, Not(HasSubstr(word))) << kind;
  }
}

TEST(SpotPlan, KeepsToTheSchema) {
  EXPECT_EQ(judged_by_schema("plan", at_spot("bend", {"--as", "json"}).out), "valid");
}

TEST(SpotPlan, IsOneStretchWhoseEndsAreTheSpot) {
  const auto plan = nlohmann::json::parse(at_spot("bend", {"--as", "json"}).out);
  ASSERT_EQ(plan.at("stretches").size(), 1U);
  const auto& spot = plan.at("stretches").at(0);
  EXPECT_EQ(spot.at("spot"), "wading");
  EXPECT_EQ(spot.at("from"), "bend");
  EXPECT_EQ(spot.at("to"), "bend");
  bool out = false;
  for (const auto& hours : spot.at("reaches")) out = out || !hours.at("kept_out_why").is_null();
  EXPECT_TRUE(out) << "the dam's rise of the demo's day keeps a wader out";
}

TEST(SpotPlan, NamesTheNearestSpotsOfAMistypedOne) {
  const auto ran = at_spot("bned");
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_EQ(ran.out, "");
  EXPECT_THAT(ran.err, HasSubstr("--at: found \"bned\"; river.json has these spots: bend"));
}

// Mile 48 lies in the lake above the dam, where no gauge speaks.
TEST(SpotPlan, NamesNoHourWhereTheFlowIsUnknown) {
  const DemoCopy demo;
  demo.replace("river.json", "\"mile\": 38.0, \"platform\"", "\"mile\": 48.0, \"platform\"");
  const auto page = demo.plan({"--at", "bend"}).out;
  EXPECT_THAT(page, HasSubstr("NO HOUR NAMED"));
  EXPECT_THAT(page, HasSubstr("flow not known"));
  EXPECT_THAT(page, HasSubstr("no line is named, nor whether you"));
  EXPECT_THAT(page, Not(HasSubstr("FISH 0")));
}

TEST(SpotPlan, SaysInEveryHourWhyNobodyMayWade) {
  const DemoCopy demo;
  demo.replace("river.json", "\"depth_ft\": 3.0, \"surface_speed_ft_s\": 2.6", "\"depth_ft\": 4.5, \"surface_speed_ft_s\": 3.6");
  const auto page = demo.plan({"--at", "bend"}).out;
  EXPECT_THAT(page, HasSubstr("NO PLAN: Lantern River"));
  EXPECT_THAT(page, HasSubstr("No hour can be fished at Cottonwood Bend: too deep or too fast to\n"));
  EXPECT_THAT(page, HasSubstr("stay out of it"));
  EXPECT_THAT(page, HasSubstr("07:30-19:00: too deep or too fast to wade"));
}

TEST(SpotPlan, IsNoPlanWithoutAReading) {
  const DemoCopy demo;
  std::filesystem::remove_all(demo.payloads());
  std::filesystem::create_directory(demo.payloads());
  const auto ran = demo.plan({"--at", "bend"});
  EXPECT_EQ(ran.exit_code, 69);
  EXPECT_THAT(ran.out, HasSubstr("NO PLAN: Lantern River"));
}

TEST(SpotPlan, TellsHowToTypeASpotWhereThereIsNone) {
  const DemoCopy demo;
  auto river = nlohmann::ordered_json::parse(text_of(demo.config() / "river.json"), nullptr, true, true);
  river.erase("spots");
  write_text(demo.config() / "river.json", river.dump(1));
  const auto ran = demo.plan({"--at", "bend"});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("river.json has no spots; add one"));
}

}  // namespace
}  // namespace floatwright::testing
