#include "engine/wording/float_plan.hpp"

#include <gmock/gmock.h>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

void append(std::string& out, const std::vector<std::string>& lines) {
  for (const std::string& line : lines) out += line + "\n";
}

// All words of a page, block after block, labels before their lines.
std::string words_of(const Page& page) {
  std::string out;
  for (const Block& block : page.blocks) {
    if (const auto* heading = std::get_if<Heading>(&block)) append(out, {heading->left + " " + heading->right});
    if (const auto* lines = std::get_if<Lines>(&block)) {
      out += lines->label + " ";
      append(out, lines->lines);
    }
    if (const auto* table = std::get_if<PageTable>(&block))
      for (const auto& row : table->rows) append(out, row);
    if (const auto* rods = std::get_if<Rods>(&block)) {
      for (const RodLine& rod : rods->rods) append(out, rod.lines);
      append(out, rods->bag);
    }
  }
  return out;
}

std::string plan_words(const DayPlan& plan) { return words_of(float_plan(plan, sample_inputs())); }

TEST(FloatPlan, NamesTheWeekdayFirst) {
  const Page page = float_plan(sample_plan(), sample_inputs());
  EXPECT_EQ(std::get<Heading>(page.blocks.front()).right, "FRI 14 MAY 2027");
  EXPECT_EQ(page.title, "Lantern River, Friday 14 May 2027");
}

TEST(FloatPlan, AlwaysDefersToTheLawAndTheGuide) {
  DayPlan nothing = sample_plan();
  nothing.nothing = true;
  for (const DayPlan& plan : {sample_plan(), nothing})
    EXPECT_THAT(plan_words(plan), HasSubstr("The law, the agency and a licensed guide on the water decide."));
}

TEST(FloatPlan, NeverSaysSafeOkOrGo) {
  for (const char* word : {"safe", "Safe", "SAFE", " OK", " go ", " Go "})
    EXPECT_THAT(plan_words(sample_plan()), Not(HasSubstr(word)));
}

TEST(FloatPlan, PutsTheHeaviestCautionFirst) {
  const std::string text = plan_words(sample_plan());
  EXPECT_LT(text.find("CARE Boulder garden: The Ledge"), text.find("Heron Dam releases"));
  EXPECT_LT(text.find("Heron Dam releases"), text.find("life jackets ON"));
}

TEST(FloatPlan, SaysOnceWhatHoldsAtSeveralPlaces) {
  DayPlan plan = sample_plan();
  Caution other = plan.stretches[0].cautions.back();
  other.where = "Long pool";
  plan.stretches[0].cautions.push_back(other);
  EXPECT_THAT(plan_words(plan), HasSubstr("Boulder garden and Long pool: Depth is a guess"));
}

TEST(FloatPlan, SaysOfALimitOfOursThatItIsJudgement) {
  DayPlan plan = sample_plan();
  plan.cautions[1].basis = "judgement: a week is long";
  EXPECT_THAT(plan_words(plan), HasSubstr("CHECK AGAIN TODAY (the limit is our judgement)."));
}

TEST(FloatPlan, CallsAReachWithoutANameByItsMilesOnce) {
  DayPlan plan = sample_plan();
  plan.stretches[0].reaches[1].name = "mile 38.6-37.4";
  EXPECT_THAT(plan_words(plan), HasSubstr("\nmile 38.6-37.4\n"));
}

TEST(FloatPlan, SaysTheRainOnce) {
  DayPlan plan = sample_plan();
  Caution doubt;
  doubt.kind = CautionKind::ForecastDoubt;
  doubt.text = "If it rains tonight all of this is wrong.";
  plan.cautions.push_back(doubt);
  const std::string text = plan_words(plan);
  EXPECT_EQ(text.find("If it rains"), text.rfind("If it rains"));
}

TEST(FloatPlan, NeverFishesAClosedWater) {
  EXPECT_THAT(plan_words(sample_plan()), HasSubstr("CLOSED: spawning fish off the mouth of Alder Creek. Do not fish."));
}

TEST(FloatPlan, IsNoPlanWithoutAReadingAndSaysWhatToDo) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  plan.readings.clear();
  plan.reading_gauges.clear();
  plan.missing_gauges = {"heron", "ferry"};
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, AllOf(HasSubstr("NO PLAN: Lantern River FRI 14 MAY 2027"), HasSubstr("No gauge gave a reading."),
                          HasSubstr("Look at the gauge yourself"), HasSubstr("NO READING of heron and ferry")));
  EXPECT_THAT(text, Not(HasSubstr("PUT IN")));
}

TEST(FloatPlan, IsNoPlanWhenEveryStretchBreaksALimitAndNamesTheLimits) {
  DayPlan plan = sample_plan();
  plan.stretches.erase(plan.stretches.begin(), plan.stretches.begin() + 2);
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, AllOf(HasSubstr("NO PLAN"), HasSubstr("Every stretch breaks a limit."),
                          HasSubstr("Heron Ramp -> Old Ferry 17.0 mi: longer than the 14.0 mi you set.")));
  EXPECT_THAT(text, HasSubstr("1,850 cfs at heron")) << "what is known is still said";
}

TEST(FloatPlan, SaysAtTheTopThatReadingsAreOld) {
  DayPlan plan = sample_plan();
  plan.made_at += std::chrono::hours{14};
  EXPECT_THAT(plan_words(plan), HasSubstr("OLD READINGS (15 h)"));
}

TEST(FloatPlan, SpeaksOfTodayInTheMorning) {
  DayPlan plan = sample_plan();
  plan.made_at = on_the_day(5);
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, AllOf(HasSubstr("today falls on"), Not(HasSubstr("tomorrow")),
                          HasSubstr("If it rains all of this is wrong")));
}

TEST(FloatPlan, SaysUnknownWaterAsUnknown) {
  DayPlan plan = sample_plan();
  plan.stretches[0].water_at_launch = Absent{"no thermometer"};
  plan.stretches[0].flow_at_launch = Absent{"no gauge above"};
  EXPECT_THAT(plan_words(plan),
              AllOf(HasSubstr("flow not known (no gauge above)"), HasSubstr("Water temperature not known")));
}

TEST(FloatPlan, StripsControlCharactersFromNames) {
  DayInputs in = sample_inputs();
  in.river.name = "Lantern\x1b[31m River";
  EXPECT_THAT(words_of(float_plan(sample_plan(), in)), Not(HasSubstr("\x1b")));
}

TEST(FloatPlan, HasNoFootOrPoundForMetricPeople) {
  DayInputs in = sample_inputs();
  in.settings.units = UnitSystem::Metric;
  const std::string text = words_of(float_plan(sample_plan(), in));
  for (const char* unit : {" ft", " cfs", " in/s", " F "}) EXPECT_THAT(text, Not(HasSubstr(unit)));
}

TEST(FloatPlan, CarriesALineForAFlowThatIsNear) {
  DayPlan plan = sample_plan();
  plan.stretches[0].rods.spares.clear();
  EXPECT_THAT(plan_words(plan), HasSubstr("sinking tip 10 ft 4 in/s: goes on A under 1,500 cfs"));
  plan.stretches[0].reaches[0].waters[0].choice.changes_below->at = cubic_feet_per_second(900);
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, Not(HasSubstr("goes on A under 900 cfs")));
  EXPECT_THAT(text, HasSubstr("Under 900 cfs at Mill run")) << "it is still said";
}

}  // namespace
}  // namespace floatwright::testing
