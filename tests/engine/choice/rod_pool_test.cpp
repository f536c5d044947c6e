// One pool of rods for several boats: a rod in one boat only, and together worth as much as the best of all ways, changes
// of rig counted.
#include "engine/choice/rod_pool.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "tests/engine/choice/hand_made.hpp"
#include "tests/engine/choice/random_day.hpp"

namespace floatwright {
namespace {

const Judgement kJudgement;

Preferences wanting(int rods) {
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}, {Method::Indicator, 1.0}};
  preferences.rods_aboard = rods;
  return preferences;
}

// The day of a boat that may have these rods and no others.
double worth_with(const PoolBoat& boat, const RodNumbers& rods, const Tackle& tackle) {
  Preferences preferences = boat.preferences;
  for (std::size_t rod = 0; rod < tackle.rods.size(); ++rod)
    if (!std::ranges::binary_search(rods, rod)) preferences.rods_elsewhere.insert(rod);
  return worth_of(rods_aboard(boat.waters, tackle, preferences, kJudgement), boat.waters);
}

double best_by_trying_everything(const std::vector<PoolBoat>& boats, const Tackle& tackle, std::vector<RodNumbers>& held,
                                 std::size_t rod = 0) {
  if (rod == tackle.rods.size()) {
    double sum = 0.0;
    for (std::size_t boat = 0; boat < boats.size(); ++boat) sum += worth_with(boats[boat], held[boat], tackle);
    return sum;
  }
  double best = best_by_trying_everything(boats, tackle, held, rod + 1);
  for (std::size_t boat = 0; boat < boats.size(); ++boat) {
    if (static_cast<int>(held[boat].size()) >= boats[boat].preferences.rods_aboard) continue;
    held[boat].push_back(rod);
    best = std::max(best, best_by_trying_everything(boats, tackle, held, rod + 1));
    held[boat].pop_back();
  }
  return best;
}

TEST(RodPool, IsSharedOutAsTheBestOfAllWays) {
  std::mt19937 random(20270514);
  for (int day = 0; day < 12; ++day) {
    const Tackle tackle = rack(4, 2, 1);
    std::vector<PoolBoat> boats;
    for (int boat = 0; boat < 3; ++boat) boats.push_back({random_day(tackle, 3, random), wanting(1 + boat % 2)});
    const auto given = rods_of_boats(boats, tackle, kJudgement);
    std::set<std::size_t> seen;
    double worth = 0.0;
    for (std::size_t boat = 0; boat < boats.size(); ++boat) {
      for (const std::size_t rod : given[boat]) EXPECT_TRUE(seen.insert(rod).second) << "rod " << rod << " in two boats";
      worth += worth_with(boats[boat], given[boat], tackle);
    }
    std::vector<RodNumbers> held(boats.size());
    // the trace that settles ties is worth at most a thousandth of a minute each minute
    EXPECT_NEAR(worth, best_by_trying_everything(boats, tackle, held), 0.7) << "day " << day;
  }
}

// Four boats and a rack of twelve rods, two each: every pair of rods in every boat.
TEST(RodPool, OfTwelveRodsAndFourBoatsIsWorthTheMost) {
  std::mt19937 random(12);
  const Tackle tackle = rack(12, 2, 1);
  std::vector<PoolBoat> boats;
  for (int boat = 0; boat < 4; ++boat) boats.push_back({random_day(tackle, 4, random), wanting(2)});
  const std::size_t lots = std::size_t{1} << tackle.rods.size();
  std::vector<double> rest(lots, 0.0);  // by which rods are left: what the boats after this one make of them
  for (const PoolBoat& boat : boats) {
    std::vector<double> best = rest;
    for (std::size_t a = 0; a < tackle.rods.size(); ++a) {
      for (std::size_t b = a + 1; b < tackle.rods.size(); ++b) {
        const std::size_t pair = std::size_t{1} << a | std::size_t{1} << b;
        const double worth = worth_with(boat, {a, b}, tackle);
        for (std::size_t left = 0; left < lots; ++left)
          if ((left & pair) == pair) best[left] = std::max(best[left], worth + rest[left & ~pair]);
      }
    }
    rest = std::move(best);
  }
  const auto given = rods_of_boats(boats, tackle, kJudgement);
  double worth = 0.0;
  for (std::size_t boat = 0; boat < boats.size(); ++boat) worth += worth_with(boats[boat], given[boat], tackle);
  EXPECT_NEAR(worth, rest.back(), 0.7);
}

TEST(RodPool, GivesTheSameAnswerAgain) {
  std::mt19937 random(7);
  const Tackle tackle = rack(5, 2, 2);
  std::vector<PoolBoat> boats;
  for (int boat = 0; boat < 4; ++boat) boats.push_back({random_day(tackle, 4, random), wanting(2)});
  EXPECT_EQ(rods_of_boats(boats, tackle, kJudgement), rods_of_boats(boats, tackle, kJudgement));
}

// Each rod has a twin, and all boats fish the same: only names can settle who gets which.
TEST(RodPool, GivesTheSameRodsWhateverTheOrderOfTheRack) {
  std::mt19937 random(20270520);
  const Tackle half = rack(3, 2, 1), tackle = rack(6, 2, 1);
  std::vector<WaterMinutes> day = random_day(half, 4, random);
  for (WaterMinutes& water : day) {
    std::vector<ScoredRig> twins = water.scored;
    for (ScoredRig& rig : twins) rig.rig.line += half.lines.size();
    water.scored.insert(water.scored.end(), twins.begin(), twins.end());
  }
  Tackle turned = tackle;
  std::ranges::reverse(turned.rods);
  std::ranges::reverse(turned.lines);
  std::vector<WaterMinutes> turned_day = day;
  for (WaterMinutes& water : turned_day)
    for (ScoredRig& rig : water.scored) rig.rig.line = tackle.lines.size() - 1 - rig.rig.line;

  const auto ids = [](const std::vector<RodNumbers>& given, const Tackle& of) {
    std::vector<std::set<std::string>> named;
    for (const RodNumbers& rods : given) {
      named.emplace_back();
      for (const std::size_t rod : rods) named.back().insert(of.rods[rod].id);
    }
    return named;
  };
  const std::vector<PoolBoat> boats{{day, wanting(2)}, {day, wanting(1)}, {day, wanting(2)}};
  const std::vector<PoolBoat> turned_boats{{turned_day, wanting(2)}, {turned_day, wanting(1)}, {turned_day, wanting(2)}};
  EXPECT_EQ(ids(rods_of_boats(boats, tackle, kJudgement), tackle),
            ids(rods_of_boats(turned_boats, turned, kJudgement), turned));
}


TEST(RodPool, GivesNoRodToABoatThatFishesNothing) {
  std::mt19937 random(3);
  const Tackle tackle = rack(2, 1, 1);
  const auto given = rods_of_boats({{{}, wanting(2)}, {random_day(tackle, 3, random), wanting(2)}}, tackle, kJudgement);
  EXPECT_THAT(given[0], ::testing::IsEmpty());
  EXPECT_THAT(given[1], ::testing::Not(::testing::IsEmpty()));
}

}  // namespace
}  // namespace floatwright
