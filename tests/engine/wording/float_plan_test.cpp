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
  plan.cautions[1].our_judgement = true;
  EXPECT_THAT(plan_words(plan), HasSubstr("CHECK AGAIN TODAY (the limit is our judgement)."));
}

TEST(FloatPlan, NamesThePublishedSourceOfALimit) {
  EXPECT_THAT(plan_words(sample_plan()), HasSubstr("dry clothes aboard (NWS; 33 CFR 175.15).\n"));
  EXPECT_THAT(plan_words(sample_plan()), HasSubstr("Less may be too much for you (your own limit).\n"));
}

TEST(FloatPlan, PutsTheMileOfAReachWithoutANameInItsOwnPlace) {
  DayPlan plan = sample_plan();
  PlannedReach& bend = plan.stretches[0].reaches[1];
  bend.named = false;
  bend.name = "below Mill Bridge";
  plan.stretches[0].reaches[0].waters[0].choice.changes_below.reset();
  bend.waters[0].choice.changes_below = LineChange{cubic_feet_per_second(1600), *bend.waters[0].choice.best};
  EXPECT_THAT(plan_words(plan),
              AllOf(HasSubstr("\nBelow Mill Bridge 38.6\n"), HasSubstr("Under 1,600 cfs below Mill Bridge (run):")));
}

TEST(FloatPlan, SaysWhatDecidesInHoursAndWorth) {
  DayPlan plan = sample_plan();
  EXPECT_THAT(plan_words(plan),
              HasSubstr("WHY Its fishing hours are worth 3 % more than those of Mill Bridge to Alder Bar; 5 h of "
                        "fishing, 93 % of it with a line aboard that fishes.\n"));
  plan.stretches[0].fished = plan.stretches[0].fishing;
  EXPECT_THAT(plan_words(plan), HasSubstr("Alder Bar; 5 h of fishing.\n"));
}

TEST(FloatPlan, SaysWhereNoLineFishes) {
  DayPlan plan = sample_plan();
  EXPECT_THAT(plan_words(plan), HasSubstr("No line that fishes at Long pool (eddy).\n"));
  plan.stretches[0].reaches[4].waters[1].fishing = Duration{};  // not fished at that hour
  EXPECT_THAT(plan_words(plan), Not(HasSubstr("No line that fishes")));
}

TEST(FloatPlan, SaysInItsHeadWhenARiseReachesTheFloat) {
  EXPECT_THAT(plan_words(sample_plan()), HasSubstr("falling slowly, rising about 12:40.\nWater"));
  DayPlan plan = sample_plan();
  std::erase_if(plan.stretches[0].cautions, [](const Caution& c) { return c.kind == CautionKind::DamRise; });
  EXPECT_THAT(plan_words(plan), HasSubstr("falling slowly.\nWater"));
}

TEST(FloatPlan, SaysTheTypedReleasesWhereTheGaugeFollowsThem) {
  DayPlan plan = sample_plan();
  DayInputs in = sample_inputs();
  in.river.dams.resize(1);
  in.river.dams[0].name = "Heron Dam";
  plan.outlooks[0].method = FlowMethod::SameHour;
  EXPECT_THAT(words_of(float_plan(plan, in)), HasSubstr("tomorrow as at the same hour on like days"));
  plan.follows_dam = {0};
  const std::string text = words_of(float_plan(plan, in));
  EXPECT_THAT(text,
              AllOf(HasSubstr("tomorrow the releases typed for Heron Dam, routed down"), Not(HasSubstr("same hour"))));
  EXPECT_THAT(text, HasSubstr("gauge heron by the releases typed for Heron Dam"));
}

std::vector<std::string> lines_labelled(const Page& page, const std::string& label) {
  for (const Block& block : page.blocks)
    if (const auto* lines = std::get_if<Lines>(&block); lines != nullptr && lines->label == label) return lines->lines;
  return {};
}

ScoredRig other_line(std::size_t line, Method method = Method::Swing) {
  ScoredRig rig;
  rig.rig = {line, std::nullopt, 0, Mass{}};
  rig.technique.method = method;
  return rig;
}

// Lines 4 and 5 of the sample are on a rod that stays ashore.
TEST(FloatPlan, TellsChangesToLinesInTheBoatFirstAndOneToALineAshore) {
  DayPlan plan = sample_plan();
  auto& reaches = plan.stretches[0].reaches;
  reaches[0].waters[0].choice.changes_above = LineChange{cubic_feet_per_second(1900), other_line(4)};
  reaches[0].waters[1].choice.changes_above = LineChange{cubic_feet_per_second(1950), other_line(5)};
  reaches[1].waters[0].choice.changes_above = LineChange{cubic_feet_per_second(2000), other_line(2)};
  reaches[1].waters[1].choice.changes_below = LineChange{cubic_feet_per_second(1400), other_line(1)};
  const auto lines = lines_labelled(float_plan(plan, sample_inputs()), "IF");
  ASSERT_EQ(lines.size(), 4u);  // the last is the rain
  EXPECT_THAT(lines[0], HasSubstr("Over 2,000 cfs at Cottonwood bend (run): floating nymph taper on C"));
  EXPECT_THAT(
      lines[1],
      HasSubstr(
          "Under 1,500 cfs at Mill run (run) first, then at Cottonwood bend (tailout): sinking tip 10 ft 4 in/s on A"));
  EXPECT_THAT(
      lines[2],
      HasSubstr(
          "Over 1,900 cfs at Mill run (run): sinking tip 15 ft 5 1/2 to 6 1/2 in/s (its rod is not in the boat)"));
}

// The river may be other by the least of the waters' margins: 1,480 / 1,850 = 0.80 and 4,033 / 3,700 = 1.09.
TEST(FloatPlan, SaysWithinWhichFlowsEveryLineHolds) {
  DayPlan plan = sample_plan();
  for (PlannedReach& reach : plan.stretches[0].reaches)
    for (PlannedWater& water : reach.waters)
      water.choice.holds = {cubic_feet_per_second(1110), cubic_feet_per_second(3700)};
  plan.stretches[0].reaches[0].waters[0].choice.holds.from = cubic_feet_per_second(1480);
  plan.stretches[0].reaches[3].whole_flow = cubic_feet_per_second(3700);
  plan.stretches[0].reaches[3].waters[0].choice.holds = {cubic_feet_per_second(1110), cubic_feet_per_second(4033)};
  EXPECT_THAT(plan_words(plan), HasSubstr("Same lines from 1,480 to 2,020 cfs at the put-in at launch."));
}

TEST(FloatPlan, HasAtMostThreeLinesOfRivalsEachReachOnceAndNamesTheRod) {
  DayPlan plan = sample_plan();
  auto& waters = plan.stretches[0].reaches[0].waters;
  waters[1].choice.as_good = {other_line(2, Method::Strip)};
  plan.stretches[0].reaches[3].waters[0].choice.by_method.push_back(other_line(0));
  plan.stretches[0].reaches[3].waters[0].choice.by_method.push_back(other_line(2, Method::Indicator));
  const auto lines = lines_labelled(float_plan(plan, sample_inputs()), "ALSO");
  ASSERT_EQ(lines.size(), 3u);
  EXPECT_THAT(lines[0], HasSubstr("Rather indicator? Best at Mill run (run): floating nymph taper on C, "));
  EXPECT_THAT(lines[1], HasSubstr("Rather swing? Best at Alder mouth: sinking tip 12 1/2 ft 5 in/s on A, "));
  EXPECT_THAT(lines[2], HasSubstr("As good at Mill run (run): sinking tip 10 ft 4 in/s on A, "));
}

TEST(FloatPlan, TellsWaterThatNobodyDescribedAsAGuessAndWhatToType) {
  DayPlan plan = sample_plan();
  PlannedReach& mill = plan.stretches[0].reaches[0];
  mill.described = false;
  mill.waters.resize(1);
  mill.waters[0].source = DepthSource::Guessed;
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, HasSubstr("Mill run 40.2: likely run"));
  EXPECT_THAT(text, HasSubstr("Nobody described the water at Mill run: its kind, depth and speed are guessed from the channel"));
  EXPECT_THAT(text, HasSubstr("in river.json"));
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
  EXPECT_THAT(text, HasSubstr("Lantern below Heron Dam 1,850 cfs at 19:45, falling slowly"))
      << "what is known is still said";
}

TEST(FloatPlan, OfADayWithoutAFloatTellsTheCautionsOfAllStretches) {
  DayPlan plan = sample_plan();
  for (PlannedStretch& stretch : plan.stretches) {
    stretch.verdict = Verdict::RuledOut;
    stretch.limit = BrokenLimit{.kind = LimitKind::TooLong, .length = stretch.length, .length_limit = miles(5.0)};
  }
  Caution rise{.kind = CautionKind::FastRise, .weight = 90, .flow_after = cubic_feet_per_second(1500.0)};
  for (const char* place : {"Mill run", "Cottonwood bend", "Long pool", "Ferry flat"}) {
    rise.where = place;
    rise.flow = *rise.flow_after * (0.7 - 0.01 * static_cast<double>(plan.stretches[1].cautions.size()));
    plan.stretches[1].cautions.push_back(rise);
  }
  Caution thin{.kind = CautionKind::BoatLimit, .weight = 94, .flow_limit = cubic_feet_per_second(900.0)};
  for (const char* place : {"Mill run", "Alder mouth", "Long pool", "Ferry flat", "Willow run"}) {
    thin.where = place;
    thin.flow = cubic_feet_per_second(640.0 + 10.0 * static_cast<double>(plan.stretches[2].cautions.size()));
    plan.stretches[2].cautions.push_back(thin);
  }
  thin.where = thin.about = "Quarry shelf";
  plan.stretches[2].cautions.push_back(thin);
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, AllOf(HasSubstr("Mill run and 4 more places: 640 cfs is under your boat's limit of 900 cfs."),
                          HasSubstr("Quarry shelf: 680 cfs is under the limit of 900 cfs typed for it.")));
  EXPECT_THAT(text, AllOf(HasSubstr("NO PLAN"), HasSubstr("The Ledge: STOP ABOVE"), HasSubstr("life jackets ON")));
  EXPECT_THAT(text, AllOf(HasSubstr("Mill run and 3 more places: River rising fast"), Not(HasSubstr("Ferry flat: "))));
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

TEST(FloatPlan, CarriesALineForAFlowThatIsNear) {
  DayPlan plan = sample_plan();
  plan.stretches[0].rods.spares.clear();
  EXPECT_THAT(plan_words(plan), HasSubstr("sinking tip 10 ft 4 in/s: goes on A under 1,500 cfs"));
  plan.stretches[0].reaches[0].waters[0].choice.changes_below->at = cubic_feet_per_second(900);
  const std::string text = plan_words(plan);
  EXPECT_THAT(text, Not(HasSubstr("goes on A under 900 cfs")));
  EXPECT_THAT(text, HasSubstr("Under 900 cfs at Mill run (run)")) << "it is still said";
}

}  // namespace
}  // namespace floatwright::testing
