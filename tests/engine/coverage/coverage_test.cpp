// What lines cover, worked out on paper, and the best sets against every set there is.
#include "engine/coverage/coverage.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <bit>
#include <random>

#include "engine/coverage/considered_lines.hpp"
#include "engine/coverage/covering_lines.hpp"
#include "engine/coverage/usual_lines.hpp"
#include "tests/engine/trip/small_river.hpp"

namespace floatwright {
namespace {

using ::testing::DoubleNear;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::vector<CoveredWeight> parts_by_chance(int lines, std::mt19937& random) {
  std::vector<CoveredWeight> parts;
  for (int i = 0; i < 60; ++i)
    parts.push_back({random() & ((LineMask{1} << lines) - 1) & random(), 1.0 + static_cast<double>(random() % 1000) / 100.0});
  return put_together(std::move(parts));
}

double best_of_all(const std::vector<CoveredWeight>& parts, int lines, int size) {
  double best = 0.0;
  for (LineMask set = 0; set < LineMask{1} << lines; ++set)
    if (std::popcount(set) == size) best = std::max(best, covered_by(parts, set));
  return best;
}

TEST(CoveringSets, AreTheBestOfAllSetsOfTheirSize) {
  std::mt19937 random(7);
  for (int turn = 0; turn < 20; ++turn) {
    const auto parts = parts_by_chance(10, random);
    const auto sets = best_sets(parts, (1u << 10) - 1, 10);
    for (std::size_t k = 0; k < sets.size(); ++k) {
      EXPECT_NEAR(sets[k].weight, best_of_all(parts, 10, static_cast<int>(k) + 1), 1e-9);
      EXPECT_NEAR(sets[k].weight, covered_by(parts, sets[k].lines), 1e-9);
    }
    EXPECT_NEAR(sets.back().weight, covered_by(parts, ~LineMask{0}), 1e-9);
  }
}

// By hand: the line that covers most alone is not in the best pair, which taking one line after the other would miss.
TEST(CoveringSets, NeedNotHoldTheLineThatCoversMostAlone) {
  const std::vector<CoveredWeight> parts{{0b011, 2}, {0b101, 2}, {0b010, 1}, {0b100, 1}};
  const auto sets = best_sets(parts, 0b111, 3);
  ASSERT_EQ(sets.size(), 2u);
  EXPECT_EQ(sets[0].lines, 0b001u);
  EXPECT_EQ(sets[1].lines, 0b110u);
  EXPECT_DOUBLE_EQ(sets[1].weight, 6.0);
}

// Three lines, the last not owned, eight reach-days.
const std::vector<ConsideredLine> kThree{{0, {}, true, {}}, {1, {}, true, {}}, {2, {}, false, {}}};
const std::vector<CoveredFishing> kEightDays{{0b001, 4.0, cubic_metres_per_second(30), 5, WaterType::Run},
                                             {0b011, 2.0, cubic_metres_per_second(40), 6, WaterType::Bank},
                                             {0b100, 1.0, cubic_metres_per_second(80), 7, WaterType::Pool},
                                             {0b110, 1.0, cubic_metres_per_second(20), 8, WaterType::Pool}};

TEST(Coverage, IsTheShareOfTheFishing) {
  const Coverage found = coverage(kThree, kEightDays, 3);
  EXPECT_DOUBLE_EQ(found.fishing, 8.0);
  EXPECT_DOUBLE_EQ(found.lines[0].alone, 6.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.lines[1].alone, 3.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.lines[2].alone, 2.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.lines[0].only, 4.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.lines[1].only, 1.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.owned, 7.0 / 8.0);
  EXPECT_DOUBLE_EQ(found.all, 1.0);
  ASSERT_EQ(found.best_sets.size(), 2u);
  EXPECT_THAT(found.best_sets[0].lines, ElementsAre(0u));
  EXPECT_THAT(found.best_sets[1].lines, ElementsAre(0u, 1u));
  EXPECT_DOUBLE_EQ(found.best_sets[1].share, 7.0 / 8.0);
}

TEST(Coverage, NamesTheLineThatWouldAddMostWithItsFlowsMonthsAndWater) {
  const Coverage found = coverage(kThree, kEightDays, 3);
  ASSERT_EQ(found.adds_most, 2u);
  EXPECT_DOUBLE_EQ(found.lines[2].only, 1.0 / 8.0);
  EXPECT_DOUBLE_EQ(in_cubic_metres_per_second(found.lines[2].adds.from), 80.0);
  EXPECT_DOUBLE_EQ(found.lines[2].adds.by_month[6], 1.0);
  EXPECT_DOUBLE_EQ(found.lines[2].adds.by_water[static_cast<std::size_t>(WaterType::Pool)], 1.0);
}

TEST(Coverage, NamesOwnedLinesWithoutWhichTheOthersCoverAsMuchAndNeverTwoThatStandForEachOther) {
  const std::vector<ConsideredLine> twins{{0, {}, true, {}}, {1, {}, true, {}}, {2, {}, true, {}}};
  const std::vector<CoveredFishing> days{{0b011, 3.0, cubic_metres_per_second(30), 5, WaterType::Run},
                                         {0b001, 1.0, cubic_metres_per_second(30), 5, WaterType::Run}};
  EXPECT_THAT(coverage(twins, days, 3).earn_nothing, ElementsAre(2u, 1u));
  EXPECT_THAT(coverage(twins, {days[0]}, 3).earn_nothing, ElementsAre(2u, 0u));
}

TEST(Coverage, OfNothingFishedIsNothing) {
  const Coverage none = coverage(kThree, {}, 3);
  EXPECT_DOUBLE_EQ(none.fishing, 0.0);
  EXPECT_FALSE(none.adds_most);
  EXPECT_THAT(none.best_sets, IsEmpty());
}

TEST(CoveringLines, HaveFourFifthsOfTheMostSecondsByAWayWorthMostThere) {
  const Judgement judgement;
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}, {Method::Strip, 1.0}, {Method::Dry, 1.0}};
  // At 10 C a tailout suits the swing by 1, the strip by 0.6: the strip's lines do not count, however well they do.
  const SecondsByMethod seconds{{Method::Swing, {{20.0, 0.6}, {16.0, 0.6}, {15.9, 0.6}, {0.0, 0.0}}},
                                {Method::Strip, {{0.0, 0.0}, {0.0, 0.0}, {30.0, 0.9}, {30.0, 0.9}}},
                                {Method::Dry, {{0.0, 0.0}, {0.0, 0.0}, {0.0, 0.0}, {25.0, 0.9}}}};
  Conditions tailout{.type = WaterType::Tailout, .temperature = celsius(10.0), .clarity = {}, .sun_elevation = {}, .hatch = false};
  EXPECT_EQ(covering_lines(seconds, tailout, preferences, judgement), 0b0011u);
  tailout.hatch = true;  // dry 0.9 x 0.8 x 2, at most 1; swing 0.8: the dry line alone
  EXPECT_EQ(covering_lines(seconds, tailout, preferences, judgement), 0b1000u);
  const SecondsByMethod nothing{{Method::Swing, {{5.9, 0.6}, {0.0, 0.0}}}};
  EXPECT_EQ(covering_lines(nothing, tailout, preferences, judgement), 0u);
}

TEST(ConsideredLines, AreEveryLineWithEachOfItsTipsAndSayWhyOneCantBeRigged) {
  ListedTackle tackle{small_tackle(), {}, {4}, {1}};
  tackle.all.lines.push_back(line_on("six", "head", LineKind::LoopedHead, 6));
  tackle.all.tips = {{"slow", feet(10), inches_per_second(3), grains(80)}, {"fast", feet(10), inches_per_second(7), grains(120)}};
  tackle.all.lines.push_back(line_on("six", "weightless", LineKind::SinkingTip, 0));
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}, {Method::Indicator, 1.0}, {Method::Dry, 1.0}};
  const auto lines = considered_lines(tackle, preferences);
  ASSERT_EQ(lines.size(), 6u);
  const auto considered = [&](const std::string& id, std::optional<std::size_t> tip) {
    return std::ranges::find_if(lines, [&](const ConsideredLine& one) {
      return tackle.all.lines[one.line].id == id && one.tip == tip;
    });
  };
  EXPECT_TRUE(considered("head", 0)->owned);
  EXPECT_FALSE(considered("head", 1)->owned);
  EXPECT_EQ(considered("head", 0)->why_not, "");
  EXPECT_THAT(considered("weightless", std::nullopt)->why_not, HasSubstr("weight of weightless is unknown"));
}

TEST(ConsideredLines, AreTheSameInAnyOrderOfTheFile) {
  Preferences preferences;
  preferences.methods = {{Method::Swing, 1.0}, {Method::Indicator, 1.0}, {Method::Dry, 1.0}};
  const auto named = [&](const Tackle& tackle) {
    std::vector<std::string> ids;
    for (const ConsideredLine& one : considered_lines({tackle, {}, {}, {}}, preferences)) ids.push_back(tackle.lines[one.line].id);
    return ids;
  };
  const Tackle tackle = small_tackle();
  Tackle turned = tackle;
  std::ranges::reverse(turned.rods);
  std::ranges::reverse(turned.lines);
  EXPECT_EQ(named(tackle), named(turned));
}

TEST(UsualLines, StandInOnlyWhereNobodyTypedALineToThinkOf) {
  ListedTackle tackle{small_tackle(), {}, {}, {}};
  const std::size_t own = tackle.all.lines.size();
  const ListedTackle more = with_usual_lines(tackle);
  EXPECT_GT(more.all.lines.size(), own);
  for (std::size_t i = own; i < more.all.lines.size(); ++i) EXPECT_FALSE(is_owned(more, i));
  EXPECT_EQ(owned_part(more).lines.size(), own);
  tackle.lines_thought_of = {0};
  EXPECT_EQ(with_usual_lines(tackle).all.lines.size(), own);
  EXPECT_EQ(owned_part(tackle).lines.size(), own - 1);
  tackle.rods_thought_of = {1};
  EXPECT_EQ(owned_part(tackle).lines.size(), own - 2);
}

}  // namespace
}  // namespace floatwright
