#include "adapters/out/json/plan_json.hpp"

#include <gmock/gmock.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::UnorderedElementsAre;
using Json = nlohmann::ordered_json;

constexpr double kCubicMetresPerCubicFoot = 0.028316846592;  // NIST SP 811 Appendix B, exact

Json sample() { return Json::parse(plan_json(sample_plan(), sample_inputs())); }

TEST(PlanJson, BeginsWithWhatItIs) {
  const Json plan = sample();
  EXPECT_EQ(plan.begin().key(), "schema_version");
  EXPECT_EQ(plan.at("kind"), "float_plan");
  EXPECT_EQ(plan.at("day"), "2027-05-14");
  EXPECT_EQ(plan.at("river"), "Lantern River");
}

// Denver is six hours behind Greenwich in May (tzdata).
TEST(PlanJson, GivesInstantsInUtcAndOnTheRiversClock) {
  const Json stretch = sample().at("stretches").at(0);
  EXPECT_EQ(stretch.at("launch"), "2027-05-14T13:30:00Z");
  EXPECT_EQ(stretch.at("launch_local"), "2027-05-14T07:30:00-06:00");
}

TEST(PlanJson, IsInSiUnits) {
  const Json water = sample().at("stretches").at(0).at("reaches").at(0).at("waters").at(0);
  EXPECT_NEAR(water.at("depth_m").at("best"), 4.5 * 0.3048, 1e-12);
  const Json& choice = water.at("choice");
  EXPECT_NEAR(choice.at("tip_length_m"), 12.5 * 0.3048, 1e-12);
  EXPECT_NEAR(choice.at("sink_rate_m_s"), 5.0 * 0.0254, 1e-12);
  EXPECT_NEAR(sample().at("readings").at(0).at("value"), 1850 * kCubicMetresPerCubicFoot, 1e-9);
  EXPECT_NEAR(sample().at("readings").at(1).at("value"), (47 - 32) / 1.8, 1e-9);
}

TEST(PlanJson, KeepsIdsAsTyped) {
  const Json choice = sample().at("stretches").at(0).at("reaches").at(0).at("waters").at(0).at("choice");
  EXPECT_EQ(choice.at("rod"), "six");
  EXPECT_EQ(choice.at("line"), "six_tip_5");
  EXPECT_EQ(choice.at("line_kind"), "sinking_tip");
  EXPECT_EQ(choice.at("method"), "swing");
  EXPECT_EQ(choice.at("platform"), "anchored");
}

TEST(PlanJson, SaysWhyAChoiceIsMissing) {
  const Json water = sample().at("stretches").at(0).at("reaches").at(4).at("waters").at(1);
  EXPECT_TRUE(water.at("choice").is_null());
  EXPECT_TRUE(water.at("depth_m").is_null());
  EXPECT_THAT(water.at("why_none").get<std::string>(), HasSubstr("no line aboard"));
  EXPECT_EQ(water.at("why_unknown"), "over the bank, where nothing was noted");
}

TEST(PlanJson, GivesTheFlowAtWhichTheLineChanges) {
  const Json changes =
      sample().at("stretches").at(0).at("reaches").at(0).at("waters").at(0).at("choice").at("changes_at");
  EXPECT_NEAR(changes.at("below").at("at_flow_m3_s"), 1480 * kCubicMetresPerCubicFoot, 1e-9);
  EXPECT_EQ(changes.at("below").at("to").at("line"), "six_tip_4");
  EXPECT_TRUE(changes.at("above").is_null());
}

TEST(PlanJson, TellsTheAgeAndTheMarksOfAReading) {
  const Json reading = sample().at("readings").at(0);
  EXPECT_EQ(reading.at("station"), "usgs:00000001");
  EXPECT_EQ(reading.at("age_s"), 35 * 60);
  EXPECT_THAT(reading.at("marks"), ElementsAre("provisional"));
}

TEST(PlanJson, PutsTheCautionsOfTheFloatBesideThoseOfTheDay) {
  const Json plan = sample();
  std::vector<std::string> what;
  for (const Json& caution : plan.at("cautions")) what.push_back(caution.at("what"));
  EXPECT_THAT(what, ElementsAre("cold_water", "rules_old", "portage", "dam_rise", "wading", "guessed_depth"));
}

TEST(PlanJson, PutsThoseOfAllStretchesWhereNoneIsFloated) {
  DayPlan plan = sample_plan();
  plan.stretches[0].verdict = Verdict::RuledOut;
  plan.stretches[0].limit = BrokenLimit{.kind = LimitKind::TooLong};
  std::vector<std::string> what;
  const Json document = Json::parse(plan_json(plan, sample_inputs()));
  for (const Json& caution : document.at("cautions")) what.push_back(caution.at("what"));
  EXPECT_THAT(what, UnorderedElementsAre("cold_water", "rules_old", "portage", "dam_rise", "wading", "guessed_depth"));
}

TEST(PlanJson, NeverPassesANumberThatIsNone) {
  DayPlan plan = sample_plan();
  plan.stretches[0].reaches[0].waters[0].depth =
      Band<Length>{metres(1), metres(std::numeric_limits<double>::quiet_NaN()), metres(2)};
  const Json document = Json::parse(plan_json(plan, sample_inputs()));
  EXPECT_TRUE(document.at("stretches").at(0).at("reaches").at(0).at("waters").at(0).at("depth_m").at("best").is_null());
  EXPECT_THAT(document.at("notes").dump(), HasSubstr("depth_m was no number"));
}

TEST(PlanJson, StaysReadableWithBytesThatAreNoUtf8) {
  DayInputs in = sample_inputs();
  in.river.name = "Lantern\xE9\x01 River";
  const std::string text = plan_json(sample_plan(), in);
  EXPECT_EQ(Json::parse(text).at("river"), "Lantern\uFFFD\x01 River");
}

TEST(PlanJson, NamesTheLimitOfARuledOutStretch) {
  const Json stretch = sample().at("stretches").at(2);
  EXPECT_EQ(stretch.at("verdict"), "ruled_out");
  EXPECT_EQ(stretch.at("limit").at("kind"), "too_long");
  EXPECT_NEAR(stretch.at("limit").at("length_limit_m"), 14 * 1609.344, 1e-6);
}

}  // namespace
}  // namespace floatwright::testing
