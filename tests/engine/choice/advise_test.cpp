// One test per rule of the advice, on scores made by hand. Lines of the small box: 0 short tip, 1 long tip, 2 full
// sinking, 3 nymph taper, 4 floating; flies: 0 plain, 1 weighted, 2 nymph, 3 dry.
#include "engine/choice/advise.hpp"

#include <gmock/gmock.h>

#include <random>

#include "engine/choice/ranking.hpp"
#include "tests/engine/choice/hand_made.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;

const Judgement kJudgement;
const Tackle kBox = small_box();

WaterChoice advised(const std::vector<ScoredRig>& scores, const std::vector<Rig>& rigged = {}) {
  return advise(scores, kBox, kJudgement.choice, rigged);
}

TEST(Advice, TakesTheMostSecondsInsideAMethod) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 20, 0.8), scored(1, 0, Method::Swing, 30, 0.8)});
  EXPECT_EQ(choice.best->rig.line, 1u);
}

TEST(Advice, TakesTheShorterTipWithinATenth) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 27.1, 0.8), scored(1, 0, Method::Swing, 30, 0.8)});
  EXPECT_EQ(choice.best->rig.line, 0u);
}

TEST(Advice, TakesAFullSinkingLineForTheLongest) {
  const WaterChoice choice = advised({scored(1, 0, Method::Swing, 28, 0.8), scored(2, 0, Method::Swing, 30, 0.8)});
  EXPECT_EQ(choice.best->rig.line, 1u);
}

TEST(Advice, TakesTheLighterFlyOnTheSameLine) {
  const WaterChoice choice = advised({scored(0, 1, Method::Swing, 30, 0.8), scored(0, 0, Method::Swing, 29, 0.8)});
  EXPECT_EQ(choice.best->rig.fly, 0u);
}

TEST(Advice, ComparesLengthThenRateThenWeight) {
  Tackle box = kBox;
  box.lines[1].tip_length = box.lines[0].tip_length;
  Rig slow_heavy{0, {}, 1, {}}, fast_light{1, {}, 0, {}};
  EXPECT_TRUE(is_less(slow_heavy, fast_light, box));
  EXPECT_FALSE(is_less(fast_light, slow_heavy, box));
  Rig shot_on = slow_heavy;
  shot_on.shot = grams(0.2);
  EXPECT_TRUE(is_less(slow_heavy, shot_on, box));
}

// 15 %, as a change must bring: 0.92 over 0.8 is that, 0.91 less.
TEST(Advice, LeavesNobodyStandingInWaterThatMayRiseForALittleMore) {
  const auto left = [](double standing) {
    std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 30, standing, Platform::Anchored),
                                  scored(0, 1, Method::Swing, 30, 0.1, Platform::Wading),
                                  scored(1, 0, Method::Strip, 20, 0.8, Platform::Held)};
    leave_standing(scores, kJudgement.choice);
    return scores.size();
  };
  EXPECT_EQ(left(0.91), 1u);
  EXPECT_EQ(left(0.93), 3u);
}

TEST(Advice, LeavesTheAnchorWhereNothingElseFishes) {
  std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 30, 0.5, Platform::Anchored),
                                scored(1, 0, Method::Strip, 5.9, 0.5, Platform::Held)};  // under 6 s a minute
  leave_standing(scores, kJudgement.choice);
  EXPECT_EQ(scores.size(), 2u);
}

TEST(Advice, KeepsWhatIsRiggedWithinATenth) {
  const std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 30, 0.8), scored(1, 1, Method::Swing, 27.5, 0.8)};
  EXPECT_EQ(advised(scores, {scores[1].rig}).best->rig, scores[1].rig);
}

TEST(Advice, DoesNotKeepWhatIsRiggedBeyondATenth) {
  const std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 30, 0.8), scored(1, 1, Method::Swing, 26, 0.8)};
  EXPECT_EQ(advised(scores, {scores[1].rig}).best->rig, scores[0].rig);
}

TEST(Advice, TakesTheWorthierMethodWhateverItsSeconds) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 15, 0.9), scored(3, 2, Method::Indicator, 50, 0.6)});
  EXPECT_EQ(choice.best->technique.method, Method::Swing);
}

TEST(Advice, TakesTheMoreEfficientOfEquallyWorthyMethods) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 35, 0.9), scored(3, 2, Method::Indicator, 50, 0.9)});
  EXPECT_EQ(choice.best->technique.method, Method::Indicator);
}

TEST(Advice, KeepsTheRiggedMethodWithinATenth) {
  const std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 35, 0.90), scored(3, 2, Method::Indicator, 50, 0.82)};
  EXPECT_EQ(advised(scores, {scores[1].rig}).best->technique.method, Method::Indicator);
  EXPECT_EQ(advised(scores).best->technique.method, Method::Swing);
}

TEST(Advice, SparesTheAnchorOnATie) {
  const std::vector<ScoredRig> scores{scored(0, 0, Method::Strip, 35, 0.90, Platform::Anchored),
                                      scored(0, 0, Method::Strip, 25, 0.85, Platform::Held)};
  EXPECT_EQ(advised(scores).best->technique.platform, Platform::Held);
}

TEST(Advice, AnchorsWhereItIsWorthIt) {
  const std::vector<ScoredRig> scores{scored(0, 0, Method::Strip, 35, 0.90, Platform::Anchored),
                                      scored(0, 0, Method::Strip, 15, 0.50, Platform::Drifting)};
  EXPECT_EQ(advised(scores).best->technique.platform, Platform::Anchored);
}

TEST(Advice, NamesNoWinnerOfNothing) {
  ScoredRig idle = scored(0, 0, Method::Swing, 8, 0.4);
  idle.efficiency = 0.09;
  const WaterChoice choice =
      advised({scored(1, 0, Method::Swing, 5.9, 0.5), idle, scored(3, 2, Method::Indicator, 40, 0.0)});
  EXPECT_FALSE(choice.best);
  EXPECT_EQ(choice.why_none, "No line aboard reaches the fish here; fish the softer edge.");
  EXPECT_TRUE(choice.by_method.empty());
  EXPECT_FALSE(choice.runner_up);
}

TEST(Advice, SaysSoWhereNothingCanBeFishedAtAll) { EXPECT_EQ(advised({}).why_none, kNothingFishedHere); }

TEST(RunnerUp, IsTheWorthiestOfTheOtherLines) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 40, 0.9), scored(0, 1, Method::Swing, 39, 0.9),
                                      scored(1, 0, Method::Swing, 30, 0.7), scored(3, 2, Method::Indicator, 20, 0.8)});
  EXPECT_EQ(choice.runner_up->rig.line, 3u);
}

TEST(RunnerUp, MayBeTheSameLineReriggedForAnotherMethod) {
  const WaterChoice choice = advised({scored(3, 2, Method::Indicator, 40, 0.9), scored(3, 3, Method::Dry, 30, 0.7)});
  EXPECT_EQ(choice.runner_up->technique.method, Method::Dry);
}

TEST(RunnerUp, IsNotTheSameRigFishedAnotherWay) {
  EXPECT_FALSE(advised({scored(0, 0, Method::Swing, 40, 0.9), scored(0, 0, Method::Strip, 30, 0.7)}).runner_up);
}

TEST(RunnerUp, MustItselfFish) {
  EXPECT_FALSE(advised({scored(0, 0, Method::Swing, 40, 0.9), scored(1, 0, Method::Swing, 5, 0.1)}).runner_up);
}

TEST(AsGood, NamesAtMostTwoOtherLinesBeforeOtherFlies) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 40.0, 0.9), scored(0, 1, Method::Swing, 39.9, 0.9),
                                      scored(1, 0, Method::Swing, 38.0, 0.9), scored(1, 1, Method::Swing, 37.0, 0.9)});
  ASSERT_EQ(choice.as_good.size(), 2u);
  EXPECT_EQ(choice.as_good[0].rig.line, 1u);
  EXPECT_EQ(choice.as_good[0].rig.fly, 0u);
  EXPECT_EQ(choice.as_good[1].rig.line, 0u);
  EXPECT_EQ(choice.as_good[1].rig.fly, 1u);
}

TEST(AsGood, LeavesOutWhatIsMoreThanATenthBehind) {
  EXPECT_TRUE(advised({scored(0, 0, Method::Swing, 40, 0.9), scored(1, 0, Method::Swing, 35, 0.9)}).as_good.empty());
}

TEST(ByMethod, KeepsTheBestRigOfEveryMethodThatFishes) {
  const WaterChoice choice = advised({scored(0, 0, Method::Swing, 40, 0.5), scored(1, 0, Method::Swing, 20, 0.5),
                                      scored(3, 2, Method::Indicator, 30, 0.7), scored(4, 3, Method::Dry, 2, 0.05)});
  ASSERT_EQ(choice.by_method.size(), 2u);
  EXPECT_EQ(choice.by_method[0].technique.method, Method::Indicator);
  EXPECT_EQ(choice.by_method[1].rig.line, 0u);
}

TEST(Advice, DoesNotDependOnTheOrderOfTheScores) {
  std::vector<ScoredRig> scores{scored(0, 0, Method::Swing, 40, 0.9), scored(1, 0, Method::Swing, 39, 0.9),
                                scored(2, 0, Method::Swing, 42, 0.9), scored(3, 2, Method::Indicator, 30, 0.9)};
  const Rig first = advised(scores).best->rig;
  std::mt19937 shuffle(7);
  for (int i = 0; i < 20; ++i) {
    std::shuffle(scores.begin(), scores.end(), shuffle);
    EXPECT_EQ(advised(scores).best->rig, first);
  }
}

}  // namespace
}  // namespace floatwright
