// Casts that were worked out once and are used again: of lines that are one to the water, and at flows looked at later.
#include "engine/choice/known_casts.hpp"

#include <gmock/gmock.h>

#include <map>

#include "engine/choice/flows_ahead.hpp"
#include "tests/engine/choice/demo_box.hpp"
#include "tests/support/warm_tables.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
const Tackle kBox = guides_box();

const FishingTables& tables() {
  static const FishingTables kTables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  return kTables;
}

std::size_t line_of(const char* id) {
  const auto found = std::ranges::find(kBox.lines, id, &Line::id);
  return static_cast<std::size_t>(found - kBox.lines.begin());
}

constexpr std::size_t kStreamer = 0;  // streamer_weighted
Rig rigged(const char* line) {
  Rig rig;
  rig.line = line_of(line);
  rig.fly = kStreamer;
  return rig;
}

Technique stripped(double count_s, double speed_m_s) {
  Technique technique;
  technique.method = Method::Strip;
  technique.count = seconds(count_s);
  technique.strip = metres_per_second(speed_m_s);
  technique.platform = Platform::Held;
  return technique;
}

Technique swung() {
  Technique technique;
  technique.mending = Mending::OneMend;
  technique.platform = Platform::Anchored;
  return technique;
}

class CastsKnown : public ::testing::Test {
 protected:
  WaterToFish water_ = run_at(25);
  Preferences people_ = guides_preferences();
  Scene scene_ = scene_of(water_, kBox, people_, kJudgement, &tables());
};

TEST_F(CastsKnown, AreOneForLinesThatAreOneToTheWater) {
  const Way nymph{rigged("five_nymph"), swung()}, taper{rigged("dry_taper"), swung()},
      tip{rigged("six_tip_5"), swung()};
  EXPECT_TRUE(cast_alike(scene_, nymph, taper));
  EXPECT_FALSE(cast_alike(scene_, nymph, tip));
  EXPECT_FALSE(cast_alike(scene_, nymph, {nymph.rig, stripped(0, 0.3)}));
  Way another_fly = taper;
  another_fly.rig.fly = 1;
  EXPECT_FALSE(cast_alike(scene_, nymph, another_fly));
}

TEST_F(CastsKnown, AreNotKnownToBeOneWithoutTables) {
  const Scene without = scene_of(water_, kBox, people_, kJudgement);
  const Way nymph{rigged("five_nymph"), swung()}, taper{rigged("dry_taper"), swung()};
  EXPECT_FALSE(cast_alike(without, nymph, taper));
  EXPECT_TRUE(cast_alike(without, nymph, nymph));
}

// Each line scored after the other has its casts, and each alone.
TEST_F(CastsKnown, AreThoseOfEachLineAlone) {
  const std::vector<Technique> ways{stripped(0, 0.3), stripped(6, 0.3), stripped(3, 0.6)};
  KnownCasts together(scene_);
  const auto first = together.scored({rigged("five_nymph"), {ways.begin(), ways.begin() + 2}});
  ASSERT_EQ(first.size(), 2U);
  for (const char* line : {"dry_taper", "six_tip_5"}) {
    SCOPED_TRACE(line);
    KnownCasts alone(scene_);
    const auto one = together.scored({rigged(line), ways}), other = alone.scored({rigged(line), ways});
    ASSERT_EQ(one.size(), ways.size());
    ASSERT_EQ(other.size(), ways.size());
    for (std::size_t i = 0; i < ways.size(); ++i) {
      EXPECT_EQ(one[i].rig, rigged(line));
      EXPECT_EQ(one[i].technique, ways[i]);
      EXPECT_GT(one[i].seconds, 0.0);
      EXPECT_NEAR(one[i].seconds, other[i].seconds, 1e-6 * other[i].seconds);
      EXPECT_NEAR(in_metres(one[i].fly_depth.best), in_metres(other[i].fly_depth.best), 1e-6);
    }
  }
}

TEST_F(CastsKnown, HaveNoAnswerWhereACaseHasNoWater) {
  water_.lane.depth.low = metres(-1.0);
  const Scene dry = scene_of(water_, kBox, people_, kJudgement, &tables());
  EXPECT_THAT(KnownCasts(dry).scored({rigged("six_tip_5"), {swung()}}), ::testing::IsEmpty());
}

class FlowsOfARun : public ::testing::Test {
 protected:
  const Way nymph_{rigged("five_nymph"), swung()}, taper_{rigged("dry_taper"), swung()},
      tip_{rigged("six_tip_5"), swung()};
  Preferences people_ = guides_preferences();
  LineAsked asked_{{nymph_, taper_, tip_}, {}, kBox, people_, kJudgement, &tables()};
  std::map<double, int> asked_for_;  // how often, by m3/s
  PresentFlow present_{cubic_metres_per_second(25), [this](Discharge flow) {
                         const double q = in_cubic_metres_per_second(flow);
                         ++asked_for_[q];
                         return q < 35 ? std::optional(run_at(q)) : std::nullopt;
                       }};
  FlowsAhead flows_{present_, asked_};
};

TEST_F(FlowsOfARun, HaveNoWaterWhereNoneIsKnownOrTheNotesAreTooFar) {
  EXPECT_NE(flows_.at(1.2), nullptr);
  EXPECT_EQ(flows_.at(1.5), nullptr);  // 37.5 m3/s
  EXPECT_EQ(flows_.at(0.39), nullptr);
  EXPECT_EQ(flows_.at(1.5), nullptr);
  for (const auto& [flow, times] : asked_for_) EXPECT_EQ(times, 1) << flow << " m3/s";
}

TEST_F(FlowsOfARun, AreWorkedOutWithTheOneThatIsAskedForAsAlone) {
  SceneAtFlow* here = flows_.at(1.1);
  ASSERT_NE(here, nullptr);
  flows_.expect({1.2, 1.05, 1.5});
  ASSERT_TRUE(flows_.cast(*here, tip_));
  for (const double factor : {1.1, 1.2, 1.05}) {
    SCOPED_TRACE(factor);
    const SceneAtFlow& there = *flows_.at(factor);
    ASSERT_EQ(there.casts.size(), 1U);
    const auto alone = middle_casts(there.scene, tip_.rig, {&tip_.technique, 1}, Casts::WorkedOut);
    const auto& ahead = there.casts.begin()->second;
    ASSERT_TRUE(ahead && alone.front());
    const double seconds = score_middle(there.scene, tip_, *ahead).seconds;
    EXPECT_GT(seconds, 1.0);
    EXPECT_NEAR(seconds, score_middle(there.scene, tip_, *alone.front()).seconds, 0.01 * seconds);
    ASSERT_EQ(ahead->samples.size(), alone.front()->samples.size());
    for (std::size_t i = 0; i < ahead->samples.size(); ++i)
      EXPECT_NEAR(in_metres(ahead->samples[i].fly_depth), in_metres(alone.front()->samples[i].fly_depth), 0.01) << i;
  }
}

// What is one to the water is asked for once.
TEST_F(FlowsOfARun, ShareTheCastsOfLinesThatAreOneToTheWater) {
  SceneAtFlow* here = flows_.at(1.1);
  ASSERT_NE(here, nullptr);
  EXPECT_EQ(&flows_.cast(*here, nymph_), &flows_.cast(*here, taper_));
  EXPECT_EQ(here->casts.size(), 1U);
}

}  // namespace
}  // namespace floatwright
