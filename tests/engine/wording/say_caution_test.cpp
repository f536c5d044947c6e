#include "engine/wording/say_caution.hpp"

#include <gmock/gmock.h>

#include <set>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr int kKinds = static_cast<int>(CautionKind::Rain) + 1;

struct CautionWording : ::testing::Test {
  River river;
  LocalClock clock{"America/Denver"};
  CautionWords words{river, clock, UnitSystem::Us};
};

Caution of(CautionKind kind) {
  Caution caution;
  caution.kind = kind;
  return caution;
}

Caution with_all_numbers(CautionKind kind) {
  Caution c = of(kind);
  c.where = "Alder Bar";
  c.about = "Heron Dam";
  c.from = on_the_day(12);
  c.at = on_the_day(12, 40);
  c.to = on_the_day(13, 30);
  c.temperature = fahrenheit(71);
  c.temperature_limit = fahrenheit(70);
  c.flow = cubic_feet_per_second(1350);
  c.flow_after = cubic_feet_per_second(1750);
  c.flow_limit = cubic_feet_per_second(1200);
  c.depth = feet(3);
  c.rise = feet(0.5);
  c.speed = feet_per_second(2.5);
  c.product = DepthTimesSpeed::from_si(0.7);
  c.product_limit = DepthTimesSpeed::from_si(0.6);
  c.age = hours(14.0);
  c.time = minutes(40);
  c.emergency = true;
  return c;
}

TEST_F(CautionWording, HasASentenceOfItsOwnForEveryKindWithAndWithoutNumbers) {
  std::set<std::string> sentences;
  for (int kind = 0; kind < kKinds; ++kind) {
    const std::string bare = say_what(of(static_cast<CautionKind>(kind)), words);
    EXPECT_GT(bare.size(), 20u) << kind;
    EXPECT_TRUE(bare.ends_with(".")) << bare;
    EXPECT_TRUE(sentences.insert(bare).second) << bare;
    EXPECT_GT(say(with_all_numbers(static_cast<CautionKind>(kind)), words).size(), 30u);
  }
}

TEST_F(CautionWording, NeverSaysSafeOkOrGo) {
  for (int kind = 0; kind < kKinds; ++kind) {
    const std::string text = " " + say(with_all_numbers(static_cast<CautionKind>(kind)), words) + " ";
    for (const char* word : {"safe", "Safe", "SAFE", " OK", " ok ", " go ", " Go ", " GO "})
      EXPECT_THAT(text, Not(HasSubstr(word)));
  }
}

TEST_F(CautionWording, GivesAFrontItsPlaceHoursAndFlows) {
  EXPECT_EQ(say(with_all_numbers(CautionKind::DamRise), words),
            "Alder Bar, 12:40 (12:00-13:30): Heron Dam releases more water, up from 1,350 to 1,750 cfs: no wading or "
            "anchoring in "
            "those hours. The schedule may change.");
}

TEST_F(CautionWording, GivesAFastRiseAsAShareAndNoRiseThatRoundsToNothing) {
  Caution c = of(CautionKind::FastRise);
  c.from = on_the_day(9);
  c.to = on_the_day(12);
  c.flow = cubic_feet_per_second(1360);
  c.flow_after = cubic_feet_per_second(1730);  // 1,730 / 1,360 = 1.272
  c.rise = feet(0.1);
  EXPECT_EQ(say_what(c, words),
            "River rising fast from 1,360 to 1,730 cfs (+27 % in 3 h): leave the bars, do not anchor.");
  c.rise = feet(0.6);
  EXPECT_THAT(say_what(c, words), HasSubstr("(+27 % in 3 h), 1/2 ft in an hour: leave"));
}

// Read in the rain: where and when, so that a river's reaches stand in one sentence.
TEST_F(CautionWording, LeavesTheNumbersOfAFastRiseOffASheet) {
  Caution c = of(CautionKind::FastRise);
  c.where = "Mill run";
  c.from = on_the_day(9);
  c.to = on_the_day(12);
  c.flow = cubic_feet_per_second(1360);
  c.flow_after = cubic_feet_per_second(1730);
  CautionWords brief = words;
  brief.brief = true;
  EXPECT_EQ(say(c, brief), "Mill run 09:00-12:00: River rising fast: leave the bars, do not anchor.");
}

TEST_F(CautionWording, SaysOfAReasonAloneThatTheWaterIsClosed) {
  Caution c = of(CautionKind::Closure);
  c.where = "Boulder garden";
  c.text = "Spawning fish.";
  EXPECT_EQ(say(c, words), "Boulder garden: Closed to fishing (Spawning fish).");
}

TEST_F(CautionWording, GivesTheHeatStopItsLimit) {
  EXPECT_THAT(say_what(with_all_numbers(CautionKind::HeatStop), words), AllOf(HasSubstr("stop by 12:00"), HasSubstr("Water up to 71 F at 12:40 (limit 70 F)")));
}

TEST_F(CautionWording, GivesHighWaterTheGaugeAndTheDayItWas) {
  EXPECT_EQ(say(with_all_numbers(CautionKind::WoodAfterHighWater), words),
            "Heron Dam on Fri 14 May: High water: wood may have moved, look ahead.");
}

TEST_F(CautionWording, TellsOfAGaugeThatRisesWhatToDo) {
  Caution c = of(CautionKind::FastRise);
  c.about = "Lantern at Old Ferry";
  c.from = on_the_day(9);
  c.to = on_the_day(15);
  c.flow = cubic_feet_per_second(1000);
  c.flow_after = cubic_feet_per_second(1340);
  EXPECT_EQ(say(c, words),
            "Lantern at Old Ferry from 1,000 to 1,340 cfs (+34 % in 6 h): rising fast, and how far is not known. If it still "
            "rises when you get there: leave the bars, do not anchor, and look out for wood coming down.");
}

TEST_F(CautionWording, InAListGivesEachWadedWaterItsNumbersAndOneSentenceToAll) {
  Caution c = with_all_numbers(CautionKind::Wading);
  EXPECT_THAT(say_what(c, words), HasSubstr("to wade, 3 ft at 2 1/2 ft/s ("));
  words.together = true;
  EXPECT_EQ(say_where_and_when(c, words), "Alder Bar, 3 ft at 2 1/2 ft/s");
  EXPECT_THAT(say_what(c, words), Not(HasSubstr("3 ft at")));
}

TEST_F(CautionWording, TellsOverFromUnderTheBoatsLimit) {
  Caution c = with_all_numbers(CautionKind::BoatLimit);
  c.about = "";
  EXPECT_THAT(say_what(c, words), HasSubstr("1,350 cfs is over your boat's limit of 1,200 cfs"));
  c.flow_limit = cubic_feet_per_second(1400);
  EXPECT_THAT(say_what(c, words), HasSubstr("is under your boat's limit of 1,400 cfs"));
  c.about = "Mill piers";
  EXPECT_THAT(say_what(c, words), HasSubstr("is under the limit of 1,400 cfs typed for it"));
}

TEST_F(CautionWording, PrintsWhatAPersonTypedAsItStands) {
  Caution c = of(CautionKind::Hazard);
  c.text = "Keep left of\tthe piers.";
  EXPECT_EQ(say_what(c, words), "Keep left of the piers.");
}

TEST_F(CautionWording, NamesAHazardWhoseTypedWordsDoNot) {
  Caution c = of(CautionKind::Hazard);
  c.about = "Mill piers";
  c.text = "Keep left.";
  EXPECT_EQ(say_what(c, words), "Mill piers: Keep left.");
}

TEST_F(CautionWording, SaysWhatWasMeasuredInThePersonsUnits) {
  Caution beyond = of(CautionKind::GuessedDepth);
  beyond.flow = cubic_feet_per_second(1000);
  beyond.flow_after = cubic_feet_per_second(2000);
  EXPECT_EQ(say_what(beyond, words),
            "This flow is beyond what was measured, 1,000 to 2,000 cfs: depth and speed are less certain.");
  const CautionWords metric{river, clock, UnitSystem::Metric};
  EXPECT_EQ(say_what(beyond, metric),
            "This flow is beyond what was measured, 28.3 to 56.6 m3/s: depth and speed are less certain.");
}

TEST_F(CautionWording, CallsASwimAnEmergencyOnlyWhereItIs) {
  Caution c = of(CautionKind::ColdWater);
  c.temperature = fahrenheit(57);
  EXPECT_THAT(say_what(c, words), Not(HasSubstr("emergency")));
  c.emergency = true;
  EXPECT_THAT(say_what(c, words), HasSubstr("A swim is an emergency"));
}

}  // namespace
}  // namespace floatwright::testing
