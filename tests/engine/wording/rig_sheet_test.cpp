#include "engine/wording/rig_sheet.hpp"

#include <gmock/gmock.h>

#include "engine/wording/sheet_stretch.hpp"
#include "tests/support/sample_plan.hpp"
#include "tests/support/sample_tackle.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::SizeIs;
using ::testing::StartsWith;

template <class B>
const B* only(const Page& page) {
  const B* found = nullptr;
  for (const Block& block : page.blocks)
    if (const B* one = std::get_if<B>(&block)) found = one;
  return found;
}

std::string sentences(const Page& page, const std::string& label) {
  std::string all;
  for (const Block& block : page.blocks)
    if (const auto* lines = std::get_if<Lines>(&block); lines != nullptr && lines->label == label)
      for (const std::string& line : lines->lines) all += line + "\n";
  return all;
}

// The day's float with `count` reaches for its own, the rigs of the first and the fourth in turn.
DayPlan plan_of(std::size_t count) {
  DayPlan plan = sample_plan();
  auto& reaches = plan.stretches[0].reaches;
  const std::vector<PlannedReach> own = reaches;
  reaches.clear();
  for (std::size_t i = 0; i < count; ++i) {
    reaches.push_back(own[i % 2 == 0 ? 0 : 3]);
    reaches.back().name = "Reach " + std::to_string(i);
    reaches.back().lunch = false;
  }
  if (count > 0) reaches.back().stop_sentence = "The Ledge: STOP ABOVE. PORTAGE RIGHT.";
  return plan;
}

TEST(RigSheet, IsInTheOrderItIsUsed) {
  const Page page = rig_sheet(sample_plan(), sample_inputs());
  std::vector<std::string> order;
  for (const Block& block : page.blocks) {
    if (std::holds_alternative<Heading>(block)) order.push_back("heading");
    if (std::holds_alternative<Rods>(block)) order.push_back("rods");
    if (std::holds_alternative<PageTable>(block)) order.push_back("hours");
    if (const auto* lines = std::get_if<Lines>(&block); lines != nullptr && !lines->label.empty())
      order.push_back(lines->label);
    if (std::holds_alternative<PencilBoxes>(block)) order.push_back("pencil");
  }
  EXPECT_THAT(order,
              ::testing::ElementsAre("heading", "rods", "CHANGE", "hours", "WATCH", "RULES", "HELP", "FROM", "pencil"));
}

TEST(RigSheet, HasAtMostEightRowsAndSaysWhatItLeftOut) {
  const Page page = rig_sheet(sample_plan(), sample_inputs());
  ASSERT_NE(only<PageTable>(page), nullptr);
  EXPECT_LE(only<PageTable>(page)->rows.size(), 8u);
  EXPECT_THAT(sentences(page, ""), HasSubstr("left out"));
}

TEST(RigSheet, KeepsStopsAndClosedWater) {
  const auto rows = only<PageTable>(rig_sheet(sample_plan(), sample_inputs()))->rows;
  EXPECT_THAT(rows, Contains(Contains(HasSubstr("STOP ABOVE"))));
  EXPECT_THAT(rows, Contains(Contains(HasSubstr("CLOSED"))));
}

TEST(RigSheet, Of40ReachesHasEightRowsAndTheStop) {
  const Page page = rig_sheet(plan_of(40), sample_inputs());
  const auto rows = only<PageTable>(page)->rows;
  EXPECT_THAT(rows, SizeIs(AnyOf(7u, 8u)));
  EXPECT_THAT(rows, Contains(Contains(HasSubstr("STOP ABOVE"))));
  EXPECT_THAT(sentences(page, ""), HasSubstr("reaches left out"));
}

TEST(RigSheet, OfNoReachesHasTheTakeOutAlone) {
  EXPECT_THAT(only<PageTable>(rig_sheet(plan_of(0), sample_inputs()))->rows, SizeIs(1));
}

TEST(RigSheet, AsksToLookTheRulesUp) {
  DayInputs in = sample_inputs();
  EXPECT_THAT(sentences(rig_sheet(sample_plan(), in), "RULES"), HasSubstr("CHECK TODAY"));
  in.river.rules_checked_on = std::chrono::year{2027} / 5 / 2;
  EXPECT_THAT(sentences(rig_sheet(sample_plan(), in), "RULES"), HasSubstr("2 May 2027: CHECK AGAIN TODAY"));
}

TEST(RigSheet, TellsTheHeaviestCautionsAndCountsTheOthers) {
  const std::string watched = sentences(rig_sheet(sample_plan(), sample_inputs()), "WATCH");
  EXPECT_THAT(watched, HasSubstr("PORTAGE RIGHT"));
  EXPECT_THAT(watched, HasSubstr("life jackets ON"));
  EXPECT_THAT(watched, HasSubstr("more: see the plan."));
}

TEST(RigSheet, NamesAReachOnceThoughACautionHoldsForSeveralOfItsWaters) {
  DayPlan plan = sample_plan();
  Caution wading{.kind = CautionKind::Wading, .weight = 90};
  for (const char* where : {"Mill run (run)", "Mill run (bank)", "Alder mouth", "Long pool (pool)"}) {
    wading.where = where;
    plan.stretches[0].cautions.push_back(wading);
  }
  EXPECT_THAT(sentences(rig_sheet(plan, sample_inputs()), "WATCH"),
              HasSubstr("Mill run (run, bank); Alder mouth; Long pool (pool): "));
}

TEST(RigSheet, TellsEveryChangeOfRigWithItsHourAndPutsItInNoBag) {
  const Page page = rig_sheet(sample_plan(), sample_inputs());
  const std::string changes = sentences(page, "CHANGE");
  EXPECT_THAT(changes, ::testing::ContainsRegex("[0-9][0-9]:[0-9]0 [A-C] (fly )?to "));
  for (const std::string& item : only<Rods>(page)->bag) EXPECT_THAT(item, ::testing::Not(HasSubstr(" at ")));
}

// Line and fly stay on: only the shot is told.
TEST(RigSheet, TellsTheShotAloneWhereOnlyThatChanges) {
  DayPlan plan = sample_plan();
  auto& reaches = plan.stretches[0].reaches;
  const auto best_at = [&](const char* name) -> ScoredRig& {
    return *std::ranges::find(reaches, name, &PlannedReach::name)->waters[0].choice.best;
  };
  ScoredRig& later = best_at("Boulder garden");
  later = best_at("Long pool");
  for (const auto& [shot, words] : {std::pair(grams(0.8), "C shot to 0.8 g, indicator: "), {Mass{}, "C shot off, indicator: "}}) {
    later.rig.shot = shot;
    EXPECT_THAT(sentences(rig_sheet(plan, sample_inputs()), "CHANGE"), HasSubstr(words));
  }
}

TEST(RigSheet, SaysThatNobodyAnchorsInARiverThatRisesOn) {
  DayPlan plan = sample_plan();
  const auto how = [&] {
    std::string all;
    const Page page = rig_sheet(plan, sample_inputs());
    for (const auto& row : only<PageTable>(page)->rows)
      if (row.size() > 5) all += row[5] + "\n";
    return all;
  };
  EXPECT_THAT(how(), ::testing::AllOf(HasSubstr("ANCHOR, "), ::testing::Not(HasSubstr("unless"))));
  GaugeOutlook rising;
  rising.state = FlowState::Rising;
  rising.now = cubic_feet_per_second(1350.0);
  rising.change_6h = 0.3;  // ln
  plan.outlooks = {rising};
  EXPECT_THAT(how(), ::testing::AllOf(HasSubstr("ANCHOR unless it rises, "), ::testing::Not(HasSubstr("ANCHOR, "))));
}

TEST(RigSheet, WithoutAPlanSaysSo) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  const Page page = rig_sheet(plan, sample_inputs());
  EXPECT_THAT(std::get<Heading>(page.blocks[0]).left, StartsWith("NO PLAN"));
  EXPECT_EQ(only<PencilBoxes>(page), nullptr);
}

TEST(SheetStretch, OfFewRowsIsTheWhole) {
  const SheetStretch sheet = sheet_stretch(sample_plan().stretches[0], sample_tackle(), 100);
  EXPECT_EQ(sheet.stretch.reaches.size(), sample_plan().stretches[0].reaches.size());
  EXPECT_EQ(sheet.waters_left_out + sheet.reaches_left_out + sheet.techniques_put_together, 0u);
}

TEST(SheetStretch, LeavesOutTheWaterFishedLess) {
  PlannedStretch whole = sample_plan().stretches[0];
  whole.reaches.resize(1);
  whole.reaches[0].waters[0].fishing = minutes(10.0);
  whole.reaches[0].waters[1].fishing = minutes(20.0);
  const SheetStretch sheet = sheet_stretch(whole, sample_tackle(), 2);
  ASSERT_THAT(sheet.stretch.reaches[0].waters, SizeIs(1));
  EXPECT_EQ(sheet.stretch.reaches[0].waters[0].type, WaterType::Bank);
  EXPECT_EQ(sheet.waters_left_out, 1u);
}

// The bank is fished less than the run, but on the one rod that has nothing else.
TEST(SheetStretch, KeepsTheLastWaterOfARod) {
  PlannedStretch whole = sample_plan().stretches[0];
  whole.reaches.resize(2);
  PlannedWater& bank = whole.reaches[0].waters[1];
  bank.choice.best->rig.line = 2;  // the nymph taper; all else is on the sinking tip
  bank.fishing = minutes(1.0);
  const auto types = [](const PlannedReach& reach) {
    std::vector<WaterType> all;
    for (const PlannedWater& water : reach.waters) all.push_back(water.type);
    return all;
  };
  const SheetStretch sheet = sheet_stretch(whole, sample_tackle(), 3);
  EXPECT_THAT(types(sheet.stretch.reaches[0]), ::testing::ElementsAre(WaterType::Bank));
  EXPECT_TRUE(sheet.stretch.reaches[0].names_water);  // the run is fished more
  EXPECT_FALSE(sheet.stretch.reaches[1].names_water);
  // Where nothing else can go it goes too.
  whole.reaches[0].waters.erase(whole.reaches[0].waters.begin());
  EXPECT_THAT(sheet_stretch(whole, sample_tackle(), 2).stretch.reaches, SizeIs(1));
}

TEST(SheetStretch, PutsNeighboursOnOneRigTogetherAsTheOneFishedLonger) {
  PlannedStretch whole = sample_plan().stretches[0];
  whole.reaches.resize(2);
  whole.reaches[0].waters.erase(whole.reaches[0].waters.begin());  // the bank, stripped
  whole.reaches[1].waters.resize(1);                               // the run, swung
  whole.reaches[0].waters[0].fishing = minutes(10.0);
  whole.reaches[1].waters[0].fishing = minutes(40.0);
  const SheetStretch sheet = sheet_stretch(whole, sample_tackle(), 2);
  EXPECT_EQ(sheet.techniques_put_together, 1u);
  EXPECT_EQ(sheet.stretch.reaches[0].waters[0].choice.best->technique.method, Method::Swing);
}

// The one in the middle, fished least, once took the way of either neighbour in turn, for ever.
TEST(SheetStretch, PutsAWholeRowOfNeighboursTogetherOnce) {
  PlannedStretch whole = sample_plan().stretches[0];
  PlannedReach reach = whole.reaches[0];
  reach.waters.resize(1);
  whole.reaches = {reach, reach, reach};
  const double fished_min[] = {30.0, 10.0, 20.0};
  for (std::size_t i = 0; i < 3; ++i) {
    whole.reaches[i].waters[0].fishing = minutes(fished_min[i]);
    whole.reaches[i].waters[0].choice.best->technique.count = minutes(0.1 * static_cast<double>(i));
  }
  const SheetStretch sheet = sheet_stretch(whole, sample_tackle(), 1);
  EXPECT_EQ(sheet.techniques_put_together, 1u);
}

}  // namespace
}  // namespace floatwright::testing
