// What a plan says first to somebody who holds the one before.
#include "engine/wording/changed_since.hpp"

#include <gmock/gmock.h>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

template <class T>
Band<T> around(T best) {
  return {best, best, best};
}

class ChangedSince : public ::testing::Test {
 protected:
  ChangedSince() : then_(handed_out(sample_plan(), in_.tackle, "")), now_(sample_plan()) {
    now_.made_at = on_the_day(4, 30);
  }

  [[nodiscard]] std::string said() {
    in_.before = then_;
    Page page;
    add_changed_since(page, told(now_, in_));
    std::string all;
    for (const Block& block : page.blocks)
      for (const std::string& line : std::get<Lines>(block).lines) all += line + "\n";
    return all;
  }
  [[nodiscard]] PlannedStretch& floated() { return now_.stretches.front(); }

  DayInputs in_ = sample_inputs();
  HandedOut then_;
  DayPlan now_;
};

TEST_F(ChangedSince, SaysNothingWhereNoPlanWasHandedOut) {
  Page page;
  add_changed_since(page, told(now_, in_));
  EXPECT_TRUE(page.blocks.empty());
}

TEST_F(ChangedSince, SaysThatNothingChanged) { EXPECT_EQ(said(), "Nothing since the plan of 20:20 yesterday.\n"); }

TEST_F(ChangedSince, NamesTheNewHours) {
  floated().launch = on_the_day(8, 0);
  floated().stop_by = on_the_day(13, 30);
  EXPECT_THAT(said(), AllOf(HasSubstr("Since the plan of 20:20 yesterday: Put in 08:00, not 07:30."),
                            HasSubstr("Too warm to fish from 13:30: that was not in it."), Not(HasSubstr("Off by"))));
}

TEST_F(ChangedSince, PassesOverWhatRoundsToTheSame) {
  floated().launch = on_the_day(7, 35);
  floated().flow_at_launch = around(cubic_feet_per_second(1900));
  EXPECT_EQ(said(), "Nothing since the plan of 20:20 yesterday.\n");
}

TEST_F(ChangedSince, NamesTheRodThatIsRiggedAnewTakenOrLeft) {
  floated().rigged[0].line = 1;
  EXPECT_THAT(said(), AllOf(HasSubstr("RIG ANEW 9 ft 6-wt [square]: sinking tip 10 ft 4 in/s, weighted streamer"),
                            Not(HasSubstr("5-wt"))));
  floated().rigged.pop_back();
  floated().rigged.push_back(Rig{4, std::nullopt, 1, Mass{}});
  EXPECT_THAT(said(), AllOf(HasSubstr("TAKE 9 ft 6 in 7-wt [diamond]: "), HasSubstr("LEAVE 9 ft 5-wt [circle].")));
}

TEST_F(ChangedSince, NamesAnotherFlowAndWater) {
  floated().flow_at_launch = around(cubic_feet_per_second(2400));
  floated().water_at_launch = around(fahrenheit(43));
  EXPECT_THAT(said(), AllOf(HasSubstr("Flow at first 2,400 cfs, not 1,850."), HasSubstr("Water at first 43 F, not 47.")));
}

TEST_F(ChangedSince, PutsAnotherStretchBeforeAllElse) {
  then_.stretch->from = "alder";
  then_.stretch->from_name = "Alder Bar";
  EXPECT_EQ(said(), "Since the plan of 20:20 yesterday: FLOAT Mill Bridge -> Old Ferry, not Alder Bar -> Old Ferry: rods "
                    "and hours are all new.\n");
  then_.stretch.reset();
  EXPECT_THAT(said(), HasSubstr("There is a plan now: Mill Bridge -> Old Ferry; there was none."));
}

TEST_F(ChangedSince, SaysThatThereIsNoPlanAnyMore) {
  now_.stretches.clear();
  EXPECT_THAT(said(), HasSubstr("There is no plan now; it was Mill Bridge -> Old Ferry."));
}

TEST_F(ChangedSince, NamesACautionThatIsNewOrHasMoved) {
  std::erase_if(then_.cautions, [](const CautionHandedOut& c) { return c.kind == CautionKind::Wading; });
  for (CautionHandedOut& c : then_.cautions)
    if (c.kind == CautionKind::DamRise) c.at = on_the_day(11, 0);
  const std::string all = said();
  EXPECT_THAT(all, AllOf(HasSubstr("NEW: Mill run"), HasSubstr("NOW 12:40, not 11:00: Alder Bar")));
  EXPECT_THAT(all, Not(HasSubstr("Rules")));
}

}  // namespace
}  // namespace floatwright::testing
