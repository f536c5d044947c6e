// One number of judgement.json overridden by a guide: every rig it speaks of is scored anew, and no other rig's score moves
// by a bit.
#include <gmock/gmock.h>

#include <set>

#include "engine/choice/judgement_keys.hpp"
#include "tests/engine/choice/demo_box.hpp"

namespace floatwright {
namespace {

Tackle swung_tip() {
  Tackle tackle;
  tackle.rods = {{"six", "square", 6, feet(9)}};
  tackle.lines = {line_on("tip", "six", LineKind::SinkingTip, 3.0, 0.13)};
  tackle.flies = {fly_class("streamer", {Method::Swing}, 0.5, 0.12)};
  return tackle;
}

Tackle floating_lines() {
  Tackle tackle;
  tackle.rods = {{"five", "circle", 6, feet(9)}};
  tackle.lines = {line_on("nymph", "five", LineKind::NymphTaper), line_on("thin", "five", LineKind::ThinNymphLine),
                  line_on("taper", "five", LineKind::DoubleTaper)};
  tackle.flies = {fly_class("nymph", {Method::Indicator, Method::TightLine}, 0.5, 0.2),
                  fly_class("dry", {Method::Dry}, 0.05, 0.0)};
  return tackle;
}

// A shallow run over cobble at 10 C, anchored in, no light and no hatch counted.
WaterToFish the_run() {
  WaterToFish water = run_at(12);
  water.bed = Bed::Cobble;
  water.temperature = celsius(10);
  water.platforms = {Platform::Anchored};
  return water;
}

using RigAndWay = std::tuple<std::size_t, std::size_t, double, Method, Platform, int>;
struct Score {
  double seconds, efficiency, worth;
  friend bool operator==(const Score&, const Score&) = default;
};
using Scores = std::map<RigAndWay, Score>;

void add_scores(const WaterToFish& water, const Tackle& tackle, std::map<Method, double> methods,
                const Judgement& judgement, Scores& found) {
  Preferences preferences;
  preferences.anglers = {{"guest", feet(25), false}};
  preferences.methods = std::move(methods);
  std::map<RigAndWay, int> ways;  // of one rig and method: numbered as they stand
  for (const ScoredRig& rig : scored_rigs(water, tackle, preferences, judgement)) {
    RigAndWay key{rig.rig.line, rig.rig.fly, rig.rig.shot.si(), rig.technique.method, rig.technique.platform, 0};
    std::get<5>(key) = ways[key]++;
    found[key] = {rig.seconds, rig.efficiency, rig.worth};
  }
}

Scores scores(const WaterToFish& water, const Judgement& judgement) {
  Scores found;
  add_scores(water, swung_tip(), {{Method::Swing, 1.0}}, judgement, found);
  add_scores(water, floating_lines(), {{Method::Dry, 0.9}, {Method::Indicator, 0.7}, {Method::TightLine, 0.8}}, judgement,
             found);
  return found;
}

Judgement overridden(const std::string& pointer, double factor) {
  Judgement judgement;
  bool met = false;
  for (const JudgementKey& key : judgement_keys(judgement)) {
    if (key.pointer != pointer) continue;
    *key.value *= factor;
    met = true;
  }
  EXPECT_TRUE(met) << pointer;
  return judgement;
}

std::set<Method> methods_that_moved(const WaterToFish& water, const std::string& pointer, double factor) {
  static std::map<std::pair<WaterType, double>, Scores> as_shipped;  // of each water once
  const auto [known, is_new] = as_shipped.try_emplace({water.type, water.clarity->si()});
  if (is_new) known->second = scores(water, Judgement{});
  const Scores &before = known->second, after = scores(water, overridden(pointer, factor));
  std::set<Method> moved;
  for (const Scores* all : {&before, &after})
    for (const auto& [key, score] : *all) {
      const auto one = before.find(key), other = after.find(key);
      if (one == before.end() || other == after.end() || !(one->second == other->second)) moved.insert(std::get<3>(key));
    }
  return moved;
}

constexpr Method kSwing = Method::Swing, kIndicator = Method::Indicator, kTight = Method::TightLine, kDry = Method::Dry;

struct Row {
  const char* pointer;
  double factor;
  std::set<Method> moves;
};

class OverriddenRow : public ::testing::TestWithParam<Row> {};

TEST_P(OverriddenRow, MovesTheMethodsThatItSpeaksOfAndNoOther) {
  const Row& row = GetParam();
  EXPECT_EQ(methods_that_moved(the_run(), row.pointer, row.factor), row.moves) << row.pointer;
}

INSTANTIATE_TEST_SUITE_P(
    Judgement, OverriddenRow,
    ::testing::Values(Row{"/suits/swing/run", 0.5, {kSwing}}, Row{"/suits/swing/pool", 0.5, {}},
                      Row{"/suits/dry/run", 0.5, {kDry}}, Row{"/suits/tight_line/by_temperature/0/share", 0.5, {}},
                      Row{"/suits/tight_line/by_temperature/2/share", 0.5, {kTight}},
                      Row{"/suits/indicator/by_clarity/3/share", 0.5, {}}, Row{"/suits/indicator/low_light", 0.5, {}},
                      Row{"/suits/hatch_dry", 0.5, {}}, Row{"/suits/cold/run", 0.5, {}},
                      Row{"/zone/shelter/sand", 0.5, {}}, Row{"/zone/reach_m/dry", 0.8, {kDry}},
                      Row{"/zone/reach_m/swing", 0.8, {kSwing}}, Row{"/zone/reach_m/strip", 0.8, {}},
                      Row{"/zone/reach_by_clarity/3/share", 0.5, {}}, Row{"/snag/rate_per_s/boulder", 2.0, {}},
                      Row{"/pace/swim_m_s", 0.5, {kSwing}}, Row{"/pace/drag_half_m_s", 0.5, {kIndicator, kTight}},
                      Row{"/times/tight_line_s", 2.0, {kTight}}, Row{"/times/shooting_head_s", 2.0, {}},
                      Row{"/times/indicator_or_dry_mend_s", 2.0, {kIndicator, kDry}}, Row{"/mends/dry", 0.0, {kDry}},
                      Row{"/mends/full_sinking", 2.0, {}}, Row{"/scatter/tight", 2.0, {kSwing}},
                      Row{"/scatter/drifted", 2.0, {kIndicator, kTight}},
                      Row{"/techniques/strip_m_s/1", 1.2, {}}, Row{"/changes/spool_min", 2.0, {}},
                      Row{"/bands/tight_below", 2.0, {}}, Row{"/choice/tie", 2.0, {}},
                      Row{"/times/cast_s", 2.0, {kSwing, kIndicator, kDry}}));

// The rows that were none of the run's are those of another water.
TEST(OverriddenJudgement, MovesTheWaterThatItSpeaksOf) {
  WaterToFish water = the_run();
  water.type = WaterType::Pool;
  water.bed = Bed::Boulder;
  water.hatch = true;
  water.clarity = fnu(60);
  EXPECT_EQ(methods_that_moved(water, "/suits/indicator/by_clarity/3/share", 0.5), std::set{kIndicator});
  EXPECT_EQ(methods_that_moved(water, "/suits/hatch_dry", 0.5).contains(kDry), false);  // none bites in water that thick
  water.clarity = fnu(3);
  EXPECT_EQ(methods_that_moved(water, "/suits/hatch_dry", 0.25), std::set{kDry});
  EXPECT_EQ(methods_that_moved(water, "/suits/swing/pool", 0.5), std::set{kSwing});
  EXPECT_EQ(methods_that_moved(water, "/suits/swing/run", 0.5), std::set<Method>{});
  EXPECT_TRUE(methods_that_moved(water, "/snag/rate_per_s/boulder", 2.0).contains(kSwing));
}

}  // namespace
}  // namespace floatwright
