#include "engine/tackle/tackle_problems.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

std::vector<std::string> errors(const Tackle& tackle) {
  std::vector<std::string> pointers;
  for (const Problem& problem : tackle_problems(tackle)) {
    if (!problem.warning) pointers.push_back(problem.pointer);
  }
  return pointers;
}

TEST(TackleProblems, ASoundRackHasNone) { EXPECT_TRUE(tackle_problems(rack::tackle()).empty()); }

TEST(TackleProblems, AreAllReportedAtOnceWithPointers) {
  Tackle tackle = rack::tackle();
  tackle.rods[1].id = "six";
  tackle.lines[rack::kTip5].on_rod = "nine";
  tackle.lines[rack::kTip3].code = "WF-60-F";
  tackle.lines[rack::kTip7].sink_rate.reset();
  tackle.lines[rack::kSinkingLeader].tip_length.reset();
  tackle.flies[rack::kNymph].sink_rate = Speed{};
  tackle.shot[1] = grams(-1);
  EXPECT_THAT(errors(tackle),
              testing::IsSupersetOf({"/rods/1/id", "/lines/0/on_rod", "/lines/2/code", "/lines/1",
                                     "/lines/7/tip_length_ft", "/flies/2/sink_rate_in_s", "/shot_g/1"}));
}

TEST(TackleProblems, EachSaysWhatWasFoundWhatMayStandThereAndWhatToDo) {
  Tackle tackle = rack::tackle();
  tackle.rods.clear(), tackle.flies.clear();
  const Problems problems = tackle_problems(tackle);
  ASSERT_FALSE(problems.empty());
  for (const Problem& problem : problems) {
    EXPECT_FALSE(problem.found.empty() || problem.allowed.empty() || problem.mend.empty()) << problem.pointer;
  }
}

TEST(TackleProblems, AMethodWithoutAFlyIsAWarningOnly) {
  Tackle tackle = rack::tackle();
  tackle.flies.pop_back();
  const Problems problems = tackle_problems(tackle);
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_TRUE(problems[0].warning);
  EXPECT_THAT(problems[0].found, testing::HasSubstr("dry"));
}

TEST(TackleProblems, TwoMainSpoolsOnARodCannotBe) {
  Tackle tackle = rack::tackle();
  tackle.lines[rack::kTip5].spare_spool = false;
  EXPECT_THAT(errors(tackle), testing::ElementsAre("/lines/4/spool"));
}

TEST(TackleProblems, AskForNoFlyOfAMethodThatIsNotFished) {
  Tackle tackle = rack::tackle();
  std::erase_if(tackle.flies, [](const FlyClass& fly) { return std::ranges::count(fly.uses, Method::Dry) > 0; });
  EXPECT_EQ(tackle_problems(tackle).size(), 1u);
  EXPECT_TRUE(tackle_problems(tackle, {Method::Swing, Method::Indicator}).empty());
}

}  // namespace
}  // namespace floatwright
