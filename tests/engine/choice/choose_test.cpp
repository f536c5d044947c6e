// The whole choice on a guide's box: what holds whatever the numbers.
#include "engine/choice/choose.hpp"

#include <gmock/gmock.h>

#include <cmath>

#include "engine/choice/changes.hpp"
#include "engine/choice/ranking.hpp"
#include "engine/choice/rigging.hpp"
#include "engine/choice/score.hpp"
#include "tests/engine/choice/demo_box.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
const Tackle kBox = guides_box();

bool names_only(const WaterChoice& choice, const std::map<Method, double>& methods) {
  std::vector<ScoredRig> named = choice.by_method;
  if (choice.best) named.push_back(*choice.best);
  if (choice.runner_up) named.push_back(*choice.runner_up);
  named.insert(named.end(), choice.as_good.begin(), choice.as_good.end());
  return std::ranges::all_of(named, [&](const ScoredRig& r) { return methods.contains(r.technique.method); });
}

TEST(Choice, NeverAdvisesAMethodThatIsNotPreferred) {
  for (const double flow : {25.0, 50.0, 100.0}) {
    Preferences preferences = guides_preferences();
    preferences.methods = {{Method::Strip, 0.4}, {Method::TightLine, 0.0}};
    const WaterChoice choice = choose(run_at(flow), kBox, preferences, kJudgement);
    EXPECT_TRUE(names_only(choice, {{Method::Strip, 1}})) << flow;
  }
}

TEST(Choice, SwingsNothingFromADriftingBoat) {
  WaterToFish water = run_at(40);
  water.platforms = {Platform::Drifting};
  for (const ScoredRig& rig : scored_rigs(water, kBox, guides_preferences(), kJudgement)) {
    EXPECT_NE(rig.technique.method, Method::Swing);
    EXPECT_EQ(rig.technique.platform, Platform::Drifting);
  }
}

TEST(Choice, ScoresAreSharesOfAMinuteAndOfOne) {
  for (const ScoredRig& rig : scored_rigs(run_at(50), kBox, guides_preferences(), kJudgement)) {
    EXPECT_GE(rig.seconds, 0.0);
    EXPECT_LE(rig.seconds, 60.0);
    EXPECT_LE(rig.efficiency, 1.0 + 1e-9);
    EXPECT_LE(rig.worth, 1.0);
    EXPECT_LE(rig.snag_per_cast, 1.0);
    EXPECT_LE(rig.fly_depth.low, rig.fly_depth.best);
    EXPECT_LE(rig.fly_depth.best, rig.fly_depth.high);
  }
}

TEST(Choice, ScoresComeBestFirst) {
  const auto scores = scored_rigs(run_at(50), kBox, guides_preferences(), kJudgement);
  EXPECT_TRUE(std::ranges::is_sorted(scores, std::ranges::greater{}, &ScoredRig::worth));
}

// The table leaves ways out: none of them may be one that would be advised. Against all ways in all three cases.
TEST(Choice, LeavesNothingOutThatFishesMore) {
  for (const double flow : {25.0, 60.0, 100.0}) {
    const WaterToFish water = run_at(flow);
    const Preferences preferences = guides_preferences();
    const Scene scene = scene_of(water, kBox, preferences, kJudgement);
    const auto table = scored_rigs(water, kBox, preferences, kJudgement);
    for (const auto& [method, preference] : preferences.methods) {
      double of_all = 0, of_table = 0;
      for (const RigWays& one : ways(scene, method)) {
        const auto middle = middle_casts(scene, one.rig, one.techniques, Casts::WorkedOut);
        std::vector<const CastPath*> paths;
        for (const auto& path : middle) paths.push_back(&path.value());
        for (const ScoredRig& rig : score(scene, one, paths)) of_all = std::max(of_all, rig.seconds);
      }
      for (const ScoredRig& rig : table) {
        if (rig.technique.method == method) of_table = std::max(of_table, rig.seconds);
      }
      EXPECT_GE(of_table, 0.98 * of_all) << "at " << flow << " m3/s, method "
                                         << static_cast<int>(method);  // a fifth of a tie
    }
  }
}

WaterToFish torrent() {
  WaterToFish water = run_at(50);
  const SurfaceSpeed fast = surface_metres_per_second(3.0);
  water.lane.surface_speed = {fast, fast, fast};
  water.boat_lane = water.lane.surface_speed;
  return water;
}

TEST(Choice, ReachesNobodyWhereFishCannotHold) {
  const WaterChoice choice = choose(torrent(), kBox, guides_preferences(), kJudgement);
  EXPECT_FALSE(choice.best);
  EXPECT_EQ(choice.why_none, kNoLineReaches);
}

// Where no fish can hold in any case one way of each line stands for all, with nothing; where one can in one case, all
// ways are tried.
TEST(Choice, TriesNoMoreThanAWayOfEachLineWhereFishCannotHold) {
  WaterToFish water = torrent();
  const auto none = scored_rigs(water, kBox, guides_preferences(), kJudgement);
  EXPECT_FALSE(none.empty());
  for (const ScoredRig& rig : none) {
    const auto alike = [&](const ScoredRig& other) {
      return same_line(rig.rig, other.rig) && rig.technique.method == other.technique.method;
    };
    EXPECT_EQ(rig.seconds, 0.0);
    EXPECT_EQ(std::ranges::count_if(none, alike), 1);
  }
  water.lane.surface_speed.low = surface_metres_per_second(0.8);
  const auto some = scored_rigs(water, kBox, guides_preferences(), kJudgement);
  EXPECT_GT(some.size(), 2 * none.size());
  EXPECT_GT(some.front().seconds, 0.0);
}

TEST(Choice, HasNothingToSayWithoutTackle) {
  const WaterChoice choice = choose(run_at(50), Tackle{}, guides_preferences(), kJudgement);
  EXPECT_EQ(choice.why_none, kNothingFishedHere);
}

TEST(Choice, ScoresNothingInAWaterWithoutDepth) {
  WaterToFish water = run_at(50);
  water.lane.depth = {};
  EXPECT_FALSE(choose(water, kBox, guides_preferences(), kJudgement).best);
}

TEST(Choice, MakesMoreOfADryFlyInAHatch) {
  const auto dry_worth = [](bool hatch) {
    WaterToFish water = run_at(25);
    water.hatch = hatch;
    double most = 0;
    for (const ScoredRig& rig : scored_rigs(water, kBox, guides_preferences(), kJudgement)) {
      if (rig.technique.method == Method::Dry) most = std::max(most, rig.worth);
    }
    return most;
  };
  EXPECT_GT(dry_worth(true), dry_worth(false));
}

TEST(Choice, KeepsTheIndicatorsLeaderOfTheMiddleCase) {
  for (const ScoredRig& rig : scored_rigs(run_at(50), kBox, guides_preferences(), kJudgement)) {
    if (rig.technique.method != Method::Indicator) continue;
    EXPECT_LE(rig.fly_depth.high, rig.indicator_to_fly + millimetres(1));
  }
}

struct Looked {
  WaterChoice choice;
  Discharge now;
};

Looked looked_from(double flow, const WaterAtFlow& water_at) {
  const Preferences preferences = guides_preferences();
  const WaterToFish water = run_at(flow);
  const auto scores = scored_rigs(water, kBox, preferences, kJudgement);
  Looked result{choose(water, kBox, preferences, kJudgement), cubic_metres_per_second(flow)};
  changes_at(result.choice, scores, water_at, result.now, kBox, preferences, kJudgement);
  return result;
}

std::optional<WaterToFish> lantern(Discharge flow) { return run_at(in_cubic_metres_per_second(flow)); }

TEST(Changes, HoldsTheLineFromBelowToAboveTheFlow) {
  for (const double flow : {25.0, 50.0}) {
    const Looked found = looked_from(flow, lantern);
    ASSERT_TRUE(found.choice.holds.from && found.choice.holds.to);
    EXPECT_LE(*found.choice.holds.from, found.now);
    EXPECT_GE(*found.choice.holds.to, found.now);
  }
}

TEST(Changes, AreToAnotherLine) {
  int changes = 0;
  for (const double flow : {25.0, 35.0, 50.0, 70.0}) {
    const Looked found = looked_from(flow, lantern);
    for (const auto& change : {found.choice.changes_below, found.choice.changes_above}) {
      if (!change) continue;
      ++changes;
      EXPECT_FALSE(same_line(change->to.rig, found.choice.best->rig)) << flow;
      EXPECT_GE(change->to.seconds, kJudgement.choice.least_seconds) << flow;
    }
  }
  EXPECT_GT(changes, 0);  // else nothing was tested
}

// The note is at 50 m3/s: nothing is said under 20 nor over 125.
TEST(Changes, AreNotLookedForTooFarFromTheNote) {
  const Looked low = looked_from(22, lantern), high = looked_from(110, lantern);
  if (low.choice.best) {
    EXPECT_GE(*low.choice.holds.from, cubic_metres_per_second(20));
  }
  if (high.choice.best) {
    EXPECT_LE(*high.choice.holds.to, cubic_metres_per_second(125));
  }
  EXPECT_TRUE(low.choice.best);
}

TEST(Changes, StopWhereTheWaterIsUnknown) {
  const auto none = [](Discharge) { return std::optional<WaterToFish>{}; };
  const Looked found = looked_from(25, none);
  EXPECT_EQ(*found.choice.holds.from, found.now);
  EXPECT_EQ(*found.choice.holds.to, found.now);
  EXPECT_FALSE(found.choice.changes_above);
}

// A river that does not change with flow never asks for another line: eight steps each way are half and double.
TEST(Changes, AreNoneInAWaterThatStaysTheSame) {
  const auto same = [](Discharge) { return std::optional(run_at(25)); };
  Looked found = looked_from(25, same);
  EXPECT_FALSE(found.choice.changes_below);
  EXPECT_FALSE(found.choice.changes_above);
  EXPECT_NEAR(in_cubic_metres_per_second(*found.choice.holds.to), 50.0, 1e-6);
}

// The boat's rods may be a compromise, so that a better line stays ashore: then it is not the flow that asks for it.
TEST(Changes, AreNoneInAWaterThatStaysTheSameWhateverIsInUse) {
  const Preferences preferences = guides_preferences();
  const auto scores = scored_rigs(run_at(25), kBox, preferences, kJudgement);
  const auto same = [](Discharge) { return std::optional(run_at(25)); };
  WaterChoice choice = choose(run_at(25), kBox, preferences, kJudgement);
  const ScoredRig best = *choice.best;
  const auto compromise = std::find_if(scores.begin(), scores.end(), [&](const ScoredRig& s) {
    return !same_line(s.rig, best.rig) && s.seconds < 0.7 * best.seconds && fishes(s, kJudgement.choice);
  });
  ASSERT_NE(compromise, scores.end());
  choice.best = *compromise;
  changes_at(choice, scores, same, cubic_metres_per_second(25), kBox, preferences, kJudgement);
  EXPECT_FALSE(choice.changes_below);
  EXPECT_FALSE(choice.changes_above);
}

}  // namespace
}  // namespace floatwright
