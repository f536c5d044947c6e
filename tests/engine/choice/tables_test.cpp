// The choice on fishing tables against the same choice with every cast worked out.
#include <gmock/gmock.h>

#include <cstdlib>
#include <functional>
#include <random>
#include <set>

#include "engine/choice/advise.hpp"
#include "engine/choice/changes.hpp"
#include "engine/choice/rigging.hpp"
#include "tests/engine/choice/demo_box.hpp"
#include "tests/support/warm_tables.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;
const Tackle kBox = guides_box();

double between(double a, double b, std::mt19937& random) {
  return a * std::pow(b / a, std::uniform_real_distribution<double>(0.0, 1.0)(random));
}

struct SpeedRange {
  double least, most;  // m/s
};

// Any water of the grid; `thread` over 1 is a bank beside a faster thread, in which the boat is.
WaterToFish water_by_chance(std::mt19937& random, double thread = 1.0, SpeedRange of_speed = {0.2, 1.35}) {
  constexpr std::array kTypes{WaterType::Run, WaterType::Riffle, WaterType::Pool, WaterType::Tailout};
  constexpr std::array kBeds{Bed::Sand, Bed::Gravel, Bed::Cobble, Bed::Boulder, Bed::Unknown};
  WaterToFish water = run_at(50);
  water.type = thread > 1.0 ? WaterType::Bank : kTypes[random() % kTypes.size()];
  water.bed = kBeds[random() % kBeds.size()];
  const double h = between(0.5, 2.6, random), v = between(of_speed.least, of_speed.most, random);  // m, m/s
  const double spread = between(1.02, 1.2, random);
  const auto speeds = [&](double u) {
    return PerCase<SurfaceSpeed>{surface_metres_per_second(u / spread), surface_metres_per_second(u),
                                 surface_metres_per_second(u * spread)};
  };
  water.lane.depth = {metres(h / spread), metres(h), metres(h * spread)};
  water.lane.surface_speed = speeds(v);
  water.boat_lane = speeds(thread * v);
  water.lane.sd_ln_depth = between(0.1, 0.3, random);
  water.lane.sd_ln_speed = between(0.12, 0.3, random);
  water.temperature = celsius(between(5, 18, random));
  water.clarity = fnu(between(2, 20, random));
  return water;
}

// Seconds of a way of fishing with every cast worked out; what it says of itself where that list does not name it.
double seconds_worked_out(const std::vector<ScoredRig>& all, const ScoredRig& of) {
  const auto same = [&](const ScoredRig& one) { return one.rig == of.rig && one.technique == of.technique; };
  const auto found = std::ranges::find_if(all, same);
  return found == all.end() ? of.seconds : found->seconds;
}

struct Agreement {
  int waters = 0, same_rig = 0, methods = 0;
  double lost = 0.0;  // sum of shares of the seconds, by method
  [[nodiscard]] double same() const { return static_cast<double>(same_rig) / waters; }
  [[nodiscard]] double share_lost() const { return lost / methods; }
  void add(const WaterToFish& water, const FishingTables& tables) {
    const Preferences preferences = guides_preferences();
    const auto all = scored_rigs(water, kBox, preferences, kJudgement);
    const WaterChoice direct = advise(all, kBox, kJudgement.choice, {});
    const WaterChoice tabled = choose(water, kBox, preferences, kJudgement, {}, &tables);
    if (!direct.best && !tabled.best) return;
    ++waters;
    same_rig += direct.best && tabled.best && direct.best->rig == tabled.best->rig ? 1 : 0;
    for (const ScoredRig& a : direct.by_method) {
      for (const ScoredRig& b : tabled.by_method) {
        if (a.technique.method != b.technique.method) continue;
        ++methods;
        lost += std::max(0.0, 1.0 - seconds_worked_out(all, b) / a.seconds);
      }
    }
  }
};

// FLOATWRIGHT_WATERS sets how many.
Agreement agreement_in(int waters, const std::function<WaterToFish(std::mt19937&)>& water) {
  const FishingTables tables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  const char* asked = std::getenv("FLOATWRIGHT_WATERS");
  std::mt19937 random(7);
  Agreement agreement;
  for (int i = 0; i < (asked ? std::atoi(asked) : waters); ++i) agreement.add(water(random), tables);
  std::printf("%d waters: the same rig in %.1f %%, %.3f %% of seconds lost\n", agreement.waters, 100 * agreement.same(),
              100 * agreement.share_lost());
  return agreement;
}

TEST(ChoiceOnTables, IsThatOfWorkingEverythingOut) {
  const Agreement found = agreement_in(45, [](std::mt19937& random) { return water_by_chance(random); });
  ASSERT_GT(found.waters, 0);
  EXPECT_GE(found.same(), 0.97);
  EXPECT_LT(found.share_lost(), 0.001);
}

// The boat outruns such water or goes at any share of its speed: between the tabled paces.
TEST(ChoiceOnTables, LosesLittleBesideABankToo) {
  const Agreement found =
      agreement_in(25, [](std::mt19937& random) { return water_by_chance(random, between(1.05, 2.0, random)); });
  ASSERT_GT(found.waters, 0);
  EXPECT_GE(found.same(), 0.90);
  EXPECT_LT(found.share_lost(), 0.002);
}

WaterToFish even_water(double depth_m, double speed_m_s) {
  WaterToFish water = run_at(50);
  water.lane.depth = {metres(0.95 * depth_m), metres(depth_m), metres(1.05 * depth_m)};
  const auto speed = [&](double share) { return surface_metres_per_second(share * speed_m_s); };
  water.lane.surface_speed = water.boat_lane = {speed(0.97), speed(1.0), speed(1.03)};
  return water;
}

// Of ways that fish, before any is worked out: how far the seconds are off over each bed, in low water and in deep.
TEST(ChoiceOnTables, HasSecondsWithinAFewHundredthsInTheMeanOverAnyBed) {
  const FishingTables tables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  const Preferences preferences = guides_preferences();
  std::mt19937 random(11);
  double off = 0.0, bias = 0.0;
  int ways = 0;
  for (const Bed bed : {Bed::Sand, Bed::Gravel, Bed::Cobble, Bed::Boulder, Bed::Unknown}) {
    WaterToFish water = water_by_chance(random);
    water.bed = bed;
    const auto worked_out = scored_rigs(water, kBox, preferences, kJudgement);
    for (const ScoredRig& read : ranked_rigs(water, kBox, preferences, kJudgement, &tables)) {
      const Method method = read.technique.method;
      const auto same = [&](const ScoredRig& one) { return one.rig == read.rig && one.technique == read.technique; };
      const auto found = std::ranges::find_if(worked_out, same);
      const bool tabled = method == Method::Swing || method == Method::Strip;
      if (!tabled || found == worked_out.end() || found->seconds < kJudgement.choice.least_seconds) continue;
      ++ways;
      bias += read.seconds / found->seconds - 1.0;
      off += std::abs(read.seconds / found->seconds - 1.0);
    }
  }
  ASSERT_GT(ways, 100);
  EXPECT_LT(off / ways, 0.03);
  EXPECT_LT(std::abs(bias / ways), 0.01);
}

// Deep, shallow, slow and fast: nothing is read from the tables there.
TEST(ChoiceOnTables, IsAsGoodOutsideTheGrid) {
  const FishingTables tables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  std::size_t fished = 0;
  for (const auto& [h, v] : {std::pair(5.6, 0.8), {5.4, 0.14}, {0.2, 0.5}, {1.4, 0.08}, {1.4, 2.4}}) {
    SCOPED_TRACE(std::to_string(h) + " m, " + std::to_string(v) + " m/s");
    const WaterToFish water = even_water(h, v);
    const auto direct = choose(water, kBox, guides_preferences(), kJudgement);
    const auto tabled = choose(water, kBox, guides_preferences(), kJudgement, {}, &tables);
    ASSERT_EQ(direct.by_method.size(), tabled.by_method.size());
    fished += direct.by_method.size();
    for (std::size_t i = 0; i < direct.by_method.size(); ++i) {
      EXPECT_EQ(direct.by_method[i].rig, tabled.by_method[i].rig);
      EXPECT_NEAR(direct.by_method[i].seconds, tabled.by_method[i].seconds, 1e-9);
    }
  }
  EXPECT_GE(fished, 8u);
}

// In all three cases within the slowest step of the grid.
TEST(ChoiceOnTables, LosesLittleInTheSlowestWaterOfTheGrid) {
  const Agreement found =
      agreement_in(6, [](std::mt19937& random) { return water_by_chance(random, 1.0, {0.134, 0.15}); });
  ASSERT_GT(found.waters, 0);
  EXPECT_EQ(found.same_rig, found.waters);
  EXPECT_LT(found.share_lost(), 0.001);
}

TEST(ChoiceOnTables, HasWorkedOutWhatItAdvises) {
  const FishingTables tables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  for (const double flow : {25.0, 50.0, 90.0}) {
    const WaterToFish water = run_at(flow);
    const auto all = scored_rigs(water, kBox, guides_preferences(), kJudgement);
    for (const ScoredRig& one : choose(water, kBox, guides_preferences(), kJudgement, {}, &tables).by_method)
      EXPECT_DOUBLE_EQ(one.seconds, seconds_worked_out(all, one)) << flow;
  }
}

// Within two of the quarter steps of 2^(1/8) to which a flow is found.
TEST(ChoiceOnTables, ChangesAtTheFlowAtWhichItWouldWithEverythingWorkedOut) {
  const FishingTables tables = testing::warm_tables(kBox, guides_preferences(), kJudgement);
  const auto at = [](Discharge flow) { return std::optional(run_at(in_cubic_metres_per_second(flow))); };
  const auto preferences = guides_preferences();
  int changes = 0;
  for (const double flow : {25.0, 70.0}) {
    const auto scored = scored_rigs(run_at(flow), kBox, preferences, kJudgement, &tables);
    WaterChoice direct = advise(scored, kBox, kJudgement.choice, {}), tabled = direct;
    const Discharge now = cubic_metres_per_second(flow);
    changes_at(direct, scored, at, now, kBox, preferences, kJudgement);
    changes_at(tabled, scored, at, now, kBox, preferences, kJudgement, &tables);
    for (const auto side : {&WaterChoice::changes_below, &WaterChoice::changes_above}) {
      ASSERT_EQ((direct.*side).has_value(), (tabled.*side).has_value()) << flow;
      if (!(direct.*side)) continue;
      ++changes;
      EXPECT_NEAR((tabled.*side)->at / (direct.*side)->at, 1.0, 0.045) << flow;
      EXPECT_TRUE(same_line((tabled.*side)->to.rig, (direct.*side)->to.rig)) << flow;
    }
  }
  EXPECT_GT(changes, 0);  // else nothing was tested
}

TablesNeeded needed_by(const Preferences& preferences, const std::vector<Platform>& platforms) {
  TablesNeeded needed;
  add_tables_needed(needed, kBox, preferences, platforms, kJudgement);
  return needed;
}

TEST(TablesNeeded, AreAskedForOnce) {
  TablesNeeded needed = needed_by(guides_preferences(), {Platform::Drifting, Platform::Anchored});
  const std::size_t orders = needed.orders.size();
  std::set<std::vector<double>> physics;
  for (const TableOrder& order : needed.orders) physics.insert(order.physics);
  EXPECT_EQ(physics.size(), orders);
  add_tables_needed(needed, kBox, guides_preferences(), {Platform::Drifting, Platform::Anchored}, kJudgement);
  EXPECT_EQ(needed.orders.size(), orders);
  EXPECT_GT(needed.uses.size(), orders);  // three floating lines of one number are one
}

TEST(TablesNeeded, AreForSwingAndStripAlone) {
  Preferences preferences = guides_preferences();
  preferences.methods = {{Method::Indicator, 1.0}, {Method::Dry, 1.0}, {Method::Swing, 0.0}};
  EXPECT_TRUE(needed_by(preferences, {Platform::Anchored}).orders.empty());
}

TEST(TablesNeeded, AreOfPacesThatCanBe) {
  const Preferences preferences = guides_preferences();
  for (const TableOrder& order : needed_by(preferences, {Platform::Wading}).orders) EXPECT_EQ(order.pace, 0.0);
  for (const TableOrder& order : needed_by(preferences, {Platform::Drifting}).orders) {
    EXPECT_EQ(order.techniques.front().method, Method::Strip);  // a swing needs a fixed rod
    EXPECT_GT(order.pace, 0.0);
  }
}

}  // namespace
}  // namespace floatwright
