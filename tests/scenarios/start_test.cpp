// From a station's number to a plan: `start` on recorded answers, the blanks typed as a person would, `check`, `plan`.
// The invented gauge's answers are in fixtures/start; the real ones were recorded from USGS Water Data
// (fixtures/recorded/usgs-water-data) and read by hand.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

const std::filesystem::path kAnswers = kRoot / "fixtures/start";

struct Started {
  explicit Started(const std::string& station = "usgs:00000004", const std::filesystem::path& answers = kAnswers)
      : ran(floatwright_says({"start", station, "--dir", config().string(), "--payload", answers.string()})) {}

  [[nodiscard]] std::filesystem::path config() const { return scratch.path() / "new" / "river"; }
  [[nodiscard]] std::string river() const { return text_of(config() / "river.json"); }
  [[nodiscard]] nlohmann::json json(const std::string& name) const {
    return nlohmann::json::parse(text_of(config() / name), nullptr, true, true);
  }
  [[nodiscard]] Ran check() const { return floatwright_says({"check", "--config", config().string()}); }
  [[nodiscard]] Ran plan() const {
    return floatwright_says({"plan", "--config", config().string(), "--offline", "--now", kDemoNow, "--as", "json"});
  }
  // Types these in place of the nulls, from above.
  void type(const std::vector<std::string>& values) const {
    std::string text = river();
    for (const std::string& value : values) {
      const auto blank = text.find(": null");
      ASSERT_NE(blank, std::string::npos) << "no blank is left for " << value;
      text.replace(blank, 6, ": " + value);
    }
    write_text(config() / "river.json", text);
  }

  ScratchFolder scratch;
  Ran ran;
};

// By pointer: what `check` has to list, and on which line of the file the null stands.
int line_of_blank(const std::string& text, const std::string& key, int which) {
  int line = 1;
  std::size_t at = 0;
  for (std::size_t i = text.find("\"" + key + "\": null"); which-- > 0; i = text.find("\"" + key + "\": null", i + 1))
    at = i;
  line += static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
  return line;
}

TEST(Start, FillsInWhatTheServiceSays) {
  const Started started;
  ASSERT_EQ(started.ran.exit_code, 0) << started.ran.err;
  EXPECT_THAT(started.ran.err, IsEmpty());
  EXPECT_THAT(started.ran.out, AllOf(HasSubstr("LANTERN RIVER NEAR OLD FERRY, MT"),
                                     HasSubstr("1850 cfs on 2027-05-13 at 19:45 (provisional)"),
                                     HasSubstr("floatwright check --config")));
  const auto river = started.json("river.json");
  EXPECT_EQ(river.at("river"), "Lantern River");
  EXPECT_EQ(river.at("time_zone"), "America/Denver");
  EXPECT_EQ(river.at("altitude_ft"), 4720);
  EXPECT_EQ(river.at("gauges").at(0).at("drainage_area_mi2"), 1290);
  EXPECT_EQ(river.at("notes").at(0).at("at_flow_cfs"), 1850);
  EXPECT_THAT(
      started.river(),
      HasSubstr("Its series: flow from 1988-10-01 to 2027-05-14; water temperature from 2011-04-12 to 2027-05-14."));
}

TEST(Start, LeavesBlanksThatCheckListsAndThatNothingIsPlannedFrom) {
  const Started started;
  const Ran check = started.check();
  EXPECT_EQ(check.exit_code, 78);
  EXPECT_THAT(check.err, HasSubstr("7 problems to mend"));
  const std::string river = started.river(), file = (started.config() / "river.json").string();
  const std::vector<std::tuple<std::string, std::string, int>> blanks{
      {"/gauges/0/mile", "mile", 1},
      {"/accesses/0/name", "name", 1},
      {"/accesses/0/mile", "mile", 2},
      {"/accesses/1/name", "name", 2},
      {"/accesses/1/mile", "mile", 3},
      {"/notes/0/waters/0/depth_ft", "depth_ft", 1},
      {"/notes/0/waters/0/surface_speed_ft_s", "surface_speed_ft_s", 1}};
  for (const auto& [pointer, key, which] : blanks)
    EXPECT_THAT(check.out, HasSubstr(file + ":" + std::to_string(line_of_blank(river, key, which)) + ": " + pointer +
                                     ": found nothing yet (null)"));
  const Ran plan = started.plan();
  EXPECT_EQ(plan.exit_code, 78);
  EXPECT_THAT(plan.out, IsEmpty());
}

TEST(Start, LeadsToAPlanOnceOneNoteIsTyped) {
  const Started started;
  started.type({"29.1", "\"Mill Bridge\"", "40.2", "\"Old Ferry\"", "28.6", "4.5", "3.5"});
  const Ran check = started.check();
  EXPECT_EQ(check.exit_code, 0) << check.out << check.err;
  const Ran plan = started.plan();
  ASSERT_EQ(plan.exit_code, 0) << plan.err;
  EXPECT_THAT(plan.err, Not(HasSubstr("monitoring-locations")));
  const auto made = nlohmann::json::parse(plan.out);
  EXPECT_EQ(made.at("day"), "2027-05-14");
  const auto& stretch = made.at("stretches").at(0);
  EXPECT_NE(stretch.at("verdict"), "ruled_out");
  EXPECT_FALSE(stretch.at("reaches").at(0).at("waters").at(0).at("choice").is_null());
}

TEST(Start, NeverWritesOverAFile) {
  const Started started;
  write_text(started.config() / "river.json", "mine");
  std::filesystem::remove(started.config() / "settings.json");
  const Ran again =
      floatwright_says({"start", "usgs:00000004", "--dir", started.config().string(), "--payload", kAnswers.string()});
  EXPECT_EQ(again.exit_code, 73);
  EXPECT_THAT(again.err, HasSubstr("river.json"));
  EXPECT_EQ(started.river(), "mine");
  EXPECT_FALSE(std::filesystem::exists(started.config() / "settings.json"));
}

struct Refused {
  std::string station, payload;
  int exit_code;
  std::string why;
};
void PrintTo(const Refused& refused, std::ostream* out) { *out << refused.station << " with " << refused.exit_code; }

class StartRefuses : public ::testing::TestWithParam<Refused> {};

TEST_P(StartRefuses, WithoutWritingAnything) {
  const auto& [station, payload, exit_code, why] = GetParam();
  ScratchFolder scratch;
  write_text(scratch.path() / "cut.json", text_of(kAnswers / "monitoring-locations.json").substr(0, 600));
  const auto answers = payload == "cut" ? scratch.path() : std::filesystem::path{payload};
  const auto config = scratch.path() / "config";
  const Ran ran = floatwright_says({"start", station, "--dir", config.string(), "--payload", answers.string()});
  EXPECT_EQ(ran.exit_code, exit_code) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr(why));
  EXPECT_FALSE(std::filesystem::exists(config));
}

INSTANTIATE_TEST_SUITE_P(All, StartRefuses,
                         ::testing::Values(Refused{"00000004", kAnswers, 64, "usgs, wsc, ea"},
                                           Refused{"usg:00000004", kAnswers, 64, "\"usgs\""},
                                           Refused{"usgs:1 or 2", kAnswers, 64, "letters, digits"},
                                           Refused{"usgs:00000009", kAnswers, 69, "tells of usgs:00000009"},
                                           Refused{"usgs:00000004", kAnswers / "none", 66, "no such directory"},
                                           Refused{"usgs:00000004", "cut", 65, "cut.json"}));

// Recorded: Yahara River at Windsor, Wisconsin; 73.6 square miles, altitude 871 ft; of its series none is read here.
TEST(Start, TakesARealGaugeAsItWasRecorded) {
  ScratchFolder answers;
  std::filesystem::copy_file(kRoot / "fixtures/recorded/usgs-water-data/v0_combined-metadata.json",
                             answers.path() / "a.json");
  const Started started("usgs:05427718", answers.path());
  ASSERT_EQ(started.ran.exit_code, 0) << started.ran.err;
  EXPECT_THAT(started.ran.out, HasSubstr("Its flow is not known."));
  const auto river = started.json("river.json");
  EXPECT_EQ(river.at("river"), "Yahara River");
  EXPECT_EQ(river.at("time_zone"), "America/Chicago");
  EXPECT_EQ(river.at("altitude_ft"), 871);
  EXPECT_EQ(river.at("gauges").at(0).at("drainage_area_mi2"), 73.6);
  EXPECT_TRUE(river.at("notes").at(0).at("at_flow_cfs").is_null());
  EXPECT_THAT(started.river(), HasSubstr("latitude 43.2089, longitude -89.3525"));
  EXPECT_THAT(started.check().err, HasSubstr("8 problems to mend"));
}

// Recorded: daily means of the Water Survey of Canada, beside which nothing tells of the station but its name.
TEST(Start, TakesAStationOfAServiceThatIsNotAskedWhatItIs) {
  const Started started("wsc:02GA010", kRoot / "fixtures/recorded/wsc");
  ASSERT_EQ(started.ran.exit_code, 0) << started.ran.err;
  const auto river = started.json("river.json");
  EXPECT_TRUE(river.at("time_zone").is_null());
  EXPECT_TRUE(river.at("accesses").at(0).at("km").is_null());
  EXPECT_EQ(started.json("settings.json").at("units"), "metric");
}

}  // namespace
}  // namespace floatwright::testing
