// `tune` on recorded and invented records: what it reports, what it keeps, and that a plan never stops for it.
#include <gmock/gmock.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using nlohmann::json;
using ::testing::AllOf;
using ::testing::ContainsRegex;
using ::testing::HasSubstr;
using ::testing::Not;

const std::filesystem::path kBacktest = kRoot / "fixtures/backtest";

Ran tune(const std::filesystem::path& config, std::vector<std::string> more) {
  std::vector<std::string> words{"tune", "--config", config.string()};
  words.insert(words.end(), more.begin(), more.end());
  return floatwright_says(words);
}

// USGS 01096500: 129 visits, 1984 to 2005.
TEST(Tune, FitsTheChannelToFieldMeasurementsAndSaysWhere) {
  ScratchFolder scratch;
  const auto ran = tune(kBacktest / "geometry", {"geometry", "--out", scratch.path().string()});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("CHANNEL: West Groton (groton)"));
  EXPECT_THAT(ran.err, HasSubstr("written: " + (scratch.path() / "tuned.json").string()));
  const auto channel = json::parse(text_of(scratch.path() / "tuned.json")).at("channels").at(0);
  const double b = channel.at("b"), f = channel.at("f"), m = channel.at("m");
  EXPECT_NEAR(b + f + m, 1.0, 1e-9);
  EXPECT_NEAR(channel.at("a").get<double>() * channel.at("c").get<double>() * channel.at("k").get<double>(), 1.0, 1e-9);
  EXPECT_GE(channel.at("visits"), 100);
}

TEST(Tune, ReportsDailyMeansBesideHoldingThemAndShowSkillRepeatsIt) {
  ScratchFolder scratch;
  std::filesystem::copy(kBacktest / "north_fork", scratch.path() / "north_fork");
  const auto ran = tune(scratch.path() / "north_fork", {"--now", "2018-02-01T00:00:00Z"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("FLOW BY DAILY MEANS: Strasburg (strasburg)"), HasSubstr("HELD"), HasSubstr("Over the gauges")));
  const auto shown = floatwright_says({"show", "skill", "--config", (scratch.path() / "north_fork").string()});
  EXPECT_EQ(shown.exit_code, 0);
  EXPECT_EQ(shown.out, ran.out);
}

TEST(Tune, ReplacesOnlyThePartThatItTuned) {
  ScratchFolder scratch;
  const std::string out = scratch.path().string();
  ASSERT_EQ(tune(kBacktest / "north_fork", {"routing", "--out", out, "--quiet"}).exit_code, 0);
  const auto before = json::parse(text_of(scratch.path() / "tuned.json"));
  const auto ran = tune(kBacktest / "north_fork", {"forecast", "--out", out, "--quiet"});
  EXPECT_EQ(ran.err, "");
  const auto after = json::parse(text_of(scratch.path() / "tuned.json"));
  EXPECT_EQ(after.at("lag_reports"), before.at("lag_reports"));
  EXPECT_FALSE(after.at("lag_reports").empty());
  EXPECT_TRUE(before.at("daily_flows").empty());
  EXPECT_FALSE(after.at("daily_flows").empty());
}

TEST(Tune, WritesTheSameBytesAgain) {
  ScratchFolder scratch;
  for (const char* folder : {"a", "b"})
    ASSERT_EQ(tune(kBacktest / "north_fork", {"--now", "2018-02-01T00:00:00Z", "--quiet", "--out", (scratch.path() / folder).string()}).exit_code, 0);
  EXPECT_EQ(text_of(scratch.path() / "a/tuned.json"), text_of(scratch.path() / "b/tuned.json"));
}

TEST(Tune, PutsAFileThatCantBeReadAsideAndLosesNothing) {
  ScratchFolder scratch;
  write_text(scratch.path() / "tuned.json", "{ \"schema_version\": 1, \"flows\": [");
  const auto ran = tune(kBacktest / "geometry", {"geometry", "--out", scratch.path().string()});
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_THAT(ran.err, HasSubstr("tuned.json.damaged"));
  EXPECT_EQ(text_of(scratch.path() / "tuned.json.damaged"), "{ \"schema_version\": 1, \"flows\": [");
  EXPECT_TRUE(json::accept(text_of(scratch.path() / "tuned.json")));
}

TEST(Tune, SaysWhatIsMissing) {
  const DemoCopy demo;
  std::filesystem::remove_all(demo.payloads());
  std::filesystem::create_directory(demo.payloads());
  const auto nothing = tune(demo.config(), {});
  EXPECT_EQ(nothing.exit_code, 69);
  EXPECT_THAT(nothing.err, HasSubstr("floatwright fetch --since"));
  EXPECT_EQ(nothing.out, "");
  EXPECT_FALSE(std::filesystem::exists(demo.config() / "tuned.json"));
  EXPECT_EQ(tune(demo.config(), {"--payload", "/no/such"}).exit_code, 66);
  EXPECT_EQ(tune(demo.config(), {"geometri"}).exit_code, 64);
}

// Two invented years of the demo's gauges.
TEST(Tune, FitsTheDemosYears) {
  ScratchFolder scratch;
  const auto ran = tune(kRoot / "config/demo", {"--payload", (kRoot / "config/demo/years").string(), "--now", kDemoNow, "--as", "json",
                                                "--quiet", "--out", scratch.path().string()});
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_EQ(ran.err, "");
  const auto report = json::parse(ran.out);
  EXPECT_EQ(report.at("flow_reports").size(), 3U);
  EXPECT_EQ(report.at("temperature_reports").size(), 2U);
  EXPECT_EQ(report.at("lag_reports").size(), 1U);
  for (const auto& flow : report.at("flow_reports"))
    for (const auto& row : flow.at("rows")) {
      if (!row.at("state").is_null()) continue;
      EXPECT_LE(row.at("forecast").at("mean_error_m3_s").get<double>(), 1.02 * row.at("holding").at("mean_error_m3_s").get<double>())
          << "a record with a daily wave and a dam is told better than by holding";
    }
  // fixtures/lantern/make_years.py: 5.2 h at 1,800 cfs and a reservoir of 0.8 h, whose half-way point comes ln 2 of it later.
  const auto lag = json::parse(text_of(scratch.path() / "tuned.json")).at("lags").at(0);
  const double over_1800_cfs = lag.at("at_flow_m3_s").get<double>() / 50.97;
  EXPECT_NEAR(lag.at("time_s").get<double>() / 3600.0 * std::pow(over_1800_cfs, lag.at("exponent").get<double>()), 5.75, 0.3);
  EXPECT_GE(lag.at("fronts"), 500);
  EXPECT_GE(report.at("lag_reports").at(0).at("tuned").at("within_quarter_hour").get<double>(), 0.95);
}

TEST(TunedPlan, NeverStopsForABrokenFile) {
  const DemoCopy demo;
  write_text(demo.config() / "tuned.json", "{ \"schema_version\": 1,\n \"flows\": 7 }");
  const auto ran = floatwright_says({"show", "river", "--config", demo.config().string(), "--offline", "--now", kDemoNow});
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_THAT(ran.err, AllOf(HasSubstr("tuned.json:2: warning: /flows: found 7"), HasSubstr("stated defaults hold")));
}

TEST(ShowSkill, WithoutATuningSaysWhatHoldsInstead) {
  const auto ran = floatwright_says({"show", "skill", "--config", (kRoot / "config/demo").string()});
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_THAT(ran.out, AllOf(ContainsRegex("stated defaults\\s+hold"), HasSubstr("floatwright tune"), Not(HasSubstr("NSE"))));
}

}  // namespace
}  // namespace floatwright::testing
