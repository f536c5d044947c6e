// The command line: exit codes of sysexits(3), and a person who mistypes is told what was meant.
#include <gmock/gmock.h>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

TEST(CommandLine, NamesTheCommandThatWasMeant) {
  const auto ran = floatwright_says({"plna"});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("\"plna\" is not known; did you mean plan?"));
}

TEST(CommandLine, NamesTheOptionThatWasMeant) {
  const auto ran = floatwright_says({"plan", "--ofline"});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("did you mean --offline?"));
}

TEST(CommandLine, PrintsHelpAndVersionOnStandardOutput) {
  for (const auto& words : std::vector<std::vector<std::string>>{{"--help"}, {"plan", "--help"}, {"check", "--help"}, {"sink", "--help"}, {"show", "readings", "--help"}, {"show", "river", "--help"}, {"show", "skill", "--help"}, {"tune", "--help"}}) {
    const auto ran = floatwright_says(words);
    EXPECT_EQ(ran.exit_code, 0);
    EXPECT_THAT(ran.out, HasSubstr("Example: floatwright"));
    EXPECT_EQ(ran.err, "");
  }
  EXPECT_THAT(floatwright_says({"--version"}).out, HasSubstr("floatwright 0."));
}

TEST(CommandLine, RefusesWhatItCannotMean) {
  const DemoCopy demo;
  EXPECT_EQ(floatwright_says({}).exit_code, 64);
  EXPECT_EQ(demo.plan({"--as", "poem"}).exit_code, 64);
  EXPECT_EQ(demo.plan({"--units", "furlongs"}).exit_code, 64);
  EXPECT_EQ(demo.plan({"--date", "2027-02-30"}).exit_code, 64);
  EXPECT_EQ(demo.plan({"--date", "2027-05-20"}).exit_code, 64) << "a week ahead can't be planned";
  const auto ran = floatwright_says({"plan", "--config", demo.config().string(), "--now", "yesterday"});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("2027-05-13T19:50:00-06:00"));
}

TEST(CommandLine, SaysThatTheConfigurationIsNotThere) {
  const auto ran = floatwright_says({"plan", "--config", "/nowhere/at/all"});
  EXPECT_EQ(ran.exit_code, 66);
  EXPECT_THAT(ran.err, HasSubstr("/nowhere/at/all"));
  EXPECT_EQ(ran.out, "");
}

TEST(CommandLine, PrintsMetricWhenAsked) {
  const DemoCopy demo;
  const auto ran = demo.plan({"--units", "metric"});
  EXPECT_THAT(ran.out, HasSubstr("m3/s"));
  EXPECT_THAT(ran.out, ::testing::Not(HasSubstr(" cfs")));
}

TEST(CommandLine, ShowsWhatARecordedAnswerHolds) {
  const auto file = (kRoot / "fixtures/recorded/two_gauges/payloads").string() +
                    "/iv_01541000_01570500_mixed_freq_temp_multimethod_emptyblocks_2018-06.json";
  const auto csv = floatwright_says({"show", "readings", "--payload", file, "--as", "csv"});
  EXPECT_EQ(csv.exit_code, 0);
  EXPECT_THAT(csv.out, HasSubstr("series,station,quantity,time,value,unit,marks"));
  EXPECT_THAT(csv.out, HasSubstr("2018-06-01T04:00:00Z"));
  EXPECT_EQ(floatwright_says({"show", "readings", "--payload", "/nowhere.json"}).exit_code, 66);
}

TEST(CommandLine, ShowsTheRiverWhenNothingIsWrong) {
  const DemoCopy demo;
  const auto ran = demo.check();
  EXPECT_EQ(ran.exit_code, 0) << ran.out << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("Mill Bridge"));
  EXPECT_THAT(ran.out, HasSubstr("Heron Dam"));
}

}  // namespace
}  // namespace floatwright::testing
