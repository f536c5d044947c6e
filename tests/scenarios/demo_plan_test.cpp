// The guide's evening on the invented Lantern River, as printed and as JSON.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

Ran demo(std::vector<std::string> more) {
  std::vector<std::string> words{"plan", "--config", (kRoot / "config/demo").string(), "--offline", "--now", kDemoNow};
  words.insert(words.end(), more.begin(), more.end());
  return floatwright_says(words);
}

TEST(DemoPlan, IsTheGoldenPage) {
  const auto ran = demo({});
  const auto golden = kRoot / "fixtures/golden/lantern_2027-05-14.txt";
  if (ran.out != text_of(golden)) {
    const auto fresh = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / "lantern_2027-05-14.txt";
    write_text(fresh, ran.out);
    FAIL() << "the page differs from " << golden << "; read " << fresh << " aloud, and copy it over if it is better\n"
           << run_program({"/usr/bin/diff", "-u", golden.string(), fresh.string()}).out;
  }
}

TEST(DemoPlan, IsMadeFromFreshReadingsAndSaysNothingElse) {
  const auto ran = demo({"--quiet"});
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_EQ(ran.err, "");
}

std::size_t count_of(const std::string& what, const std::string& text) {
  std::size_t count = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) ++count;
  return count;
}

// A table for every water fished on the stretch, the line that the plan names marked in it.
TEST(DemoPlan, ShowsToWhoAsksTheTableBehindEachChoice) {
  const auto ran = demo({"--verbose", "--as", "json"});
  const auto behind = ran.err.find("BEHIND THE CHOICES");
  ASSERT_NE(behind, std::string::npos);
  const std::string tables = ran.err.substr(behind);
  std::istringstream lines(tables);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 80u) << line;
  std::size_t choices = 0;
  const auto plan = nlohmann::json::parse(ran.out);
  for (const auto& reach : plan.at("stretches").at(0).at("reaches"))
    for (const auto& water : reach.at("waters")) choices += water.at("choice").is_null() ? 0u : 1u;
  EXPECT_GT(choices, 0u);
  EXPECT_EQ(count_of(" CHOSEN ", tables), choices);
  EXPECT_GT(count_of(" as good ", tables), 0u);
  EXPECT_GT(count_of(" stays ashore ", tables), 0u);
  EXPECT_EQ(ran.out, demo({"--as", "json"}).out);
}

TEST(DemoPlan, KeepsToTheSchema) {
  const auto ran = demo({"--as", "json"});
  EXPECT_EQ(judged_by_schema("plan", ran.out), "valid");
}

TEST(DemoPlan, RecommendsOneStretchThatBreaksNoLimit) {
  const auto plan = nlohmann::json::parse(demo({"--as", "json"}).out);
  std::size_t recommended = 0;
  for (const auto& stretch : plan.at("stretches")) recommended += stretch.at("verdict") == "recommended" ? 1u : 0u;
  EXPECT_EQ(recommended, 1u);
  EXPECT_EQ(plan.at("stretches").at(0).at("verdict"), "recommended");
  EXPECT_EQ(plan.at("day"), "2027-05-14");
}

TEST(DemoPlan, NeverAdvisesAMethodThatTheSettingsLeaveOut) {
  const auto plan = nlohmann::json::parse(demo({"--as", "json"}).out);
  std::size_t seen = 0;
  for (const auto& stretch : plan.at("stretches")) {
    for (const auto& reach : stretch.at("reaches")) {
      for (const auto& water : reach.at("waters")) {
        if (water.at("choice").is_null()) continue;
        ++seen;
        EXPECT_NE(water.at("choice").at("method"), "tight_line");
        for (const auto& best : water.at("choice").at("by_method")) EXPECT_NE(best.at("method"), "tight_line");
      }
    }
  }
  EXPECT_GT(seen, 10u);
}

// The closure of mile 36.0 to 34.8 lies in every stretch from above Alder Bar to below it.
TEST(DemoPlan, NeverFishesAClosedReach) {
  const auto plan = nlohmann::json::parse(demo({"--as", "json"}).out);
  std::size_t closed = 0;
  for (const auto& stretch : plan.at("stretches")) {
    for (const auto& reach : stretch.at("reaches")) {
      if (reach.at("closed_why").is_null()) continue;
      ++closed;
      EXPECT_THAT(reach.at("closed_why").get<std::string>(), HasSubstr("spawning fish off the mouth of Alder Creek"));
      for (const auto& water : reach.at("waters")) EXPECT_TRUE(water.at("choice").is_null());
    }
  }
  EXPECT_GT(closed, 3u);
}

TEST(DemoPlan, GivesTheSameAnswerWhenTheFilesListsAreTurnedRound) {
  const DemoCopy demo_copy;
  const auto before = demo_copy.plan({"--as", "json"});
  auto river = nlohmann::ordered_json::parse(text_of(demo_copy.config() / "river.json"), nullptr, true, true);
  for (const auto* list : {"accesses", "gauges", "reaches", "hazards", "notes"}) {
    std::reverse(river[list].begin(), river[list].end());
  }
  write_text(demo_copy.config() / "river.json", river.dump(1));
  const auto after = demo_copy.plan({"--as", "json"});
  const auto one = nlohmann::json::parse(before.out), other = nlohmann::json::parse(after.out);
  EXPECT_EQ(one.at("stretches"), other.at("stretches"));
}

// The three one-liners of README, on the demo as it lies in the tree.
TEST(ReadmeOneLiners, OfGuideOutfitterAndAnglerLeaveTheirFiles) {
  const ScratchFolder scratch;
  const auto out = scratch.path() / "out";
  const auto plan = [&](const std::vector<std::string>& asked) {
    std::vector<std::string> words{"plan", "--config", "config/demo", "--offline", "--now", kDemoNow, "--out", out.string()};
    words.insert(words.end(), asked.begin(), asked.end());
    return floatwright_says(words, {{"STATE_DIRECTORY=" + (scratch.path() / "state").string()}, kRoot});
  };
  EXPECT_EQ(plan({"--as", "plan,sheet,ashore,calendar,map,json,mail"}).exit_code, 0);
  for (const char* ending : {"-plan.txt", "-sheet.pdf", "-ashore.txt", "-plan.ics", "-map.geojson", "-map.gpx", "-plan.json", "-mail.eml"})
    EXPECT_TRUE(std::filesystem::remove(out / ("2027-05-14" + std::string{ending}))) << ending;
  EXPECT_EQ(plan({"--boats", "config/demo/boats.json", "--as", "sheet"}).exit_code, 0);
  EXPECT_TRUE(std::filesystem::remove(out / "2027-05-14-sheet.pdf"));
  EXPECT_EQ(plan({"--at", "bend", "--as", "mail"}).exit_code, 0);
  EXPECT_TRUE(std::filesystem::remove(out / "2027-05-14-mail.eml"));
  EXPECT_TRUE(std::filesystem::is_empty(out));
}

}  // namespace
}  // namespace floatwright::testing
