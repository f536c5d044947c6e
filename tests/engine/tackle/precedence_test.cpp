// Of equals: a main spool before a spare one, then the owner's order, and names for twins alone.
#include "engine/tackle/precedence.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "engine/tackle/twins.hpp"
#include "tests/engine/tackle/rack.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;

template <class Thing>
std::vector<std::string> ids(const std::vector<Thing>& list, const std::vector<std::size_t>& places) {
  std::vector<std::string> result;
  for (const std::size_t place : places) result.push_back(list[place].id);
  return result;
}

// Two rods alike and, between them, one that is not; `a` and `c` name the twins.
Tackle twins_called(const std::string& a, const std::string& c) {
  Tackle tackle;
  tackle.rods = {{a, "square", 6, feet(9)}, {"other", "circle", 5, feet(9)}, {c, "cross", 6, feet(9)}};
  for (const Rod& rod : tackle.rods) {
    tackle.lines.push_back(rack::line(rod.id + "_spare", rod.id, "WF-6-F", LineKind::Floating, 6));
    tackle.lines.back().spare_spool = true;
    tackle.lines.push_back(rack::line(rod.id + "_main", rod.id, "WF-6-F", LineKind::NymphTaper, 6));
  }
  return tackle;
}

TEST(Precedence, IsOfMainSpoolsThenOfTheFile) {
  const Tackle tackle = rack::tackle();
  EXPECT_THAT(ids(tackle.lines, precedence(tackle).lines),
              ElementsAre("floating", "nymph", "looped", "thin", "tip5", "tip7", "tip3", "full", "double", "leader"));
  EXPECT_THAT(ids(tackle.rods, precedence(tackle).rods), ElementsAre("six", "five", "seven", "thin"));
}

TEST(Precedence, OfWhatDiffersInKindIsTheOwnersOrder) {
  Tackle tackle = rack::tackle();
  std::ranges::reverse(tackle.flies);
  std::ranges::reverse(tackle.tips);
  EXPECT_THAT(ids(tackle.flies, precedence(tackle).flies), ElementsAre("dry", "heavy", "nymph", "plain", "weighted"));
  EXPECT_THAT(ids(tackle.tips, precedence(tackle).tips), ElementsAre("heavy", "light"));
}

TEST(Precedence, OfTwinsIsByNameWhereTheFirstOfThemStands) {
  const Tackle tackle = twins_called("z", "a");
  EXPECT_THAT(ids(tackle.rods, precedence(tackle).rods), ElementsAre("a", "z", "other"));
  EXPECT_THAT(ids(tackle.lines, precedence(tackle).lines),
              ElementsAre("a_main", "z_main", "other_main", "a_spare", "z_spare", "other_spare"));
}

TEST(Precedence, OfTwinsCountsAsPeopleDo) {
  const Tackle tackle = twins_called("six_10", "six_2");
  EXPECT_THAT(ids(tackle.rods, precedence(tackle).rods), ElementsAre("six_2", "six_10", "other"));
}

// A fly of another name or size is another fly to its owner, though it sinks alike.
TEST(Precedence, TakesFliesForTwinsOnlyWhereNothingElseDiffers) {
  Tackle tackle = rack::tackle();
  const FlyClass nymph = tackle.flies[rack::kNymph];
  tackle.flies = {nymph, nymph, nymph};
  tackle.flies[0].id = "c";
  tackle.flies[1].id = "b", tackle.flies[1].size = "14";
  tackle.flies[2].id = "a";
  EXPECT_THAT(ids(tackle.flies, precedence(tackle).flies), ElementsAre("a", "c", "b"));
}

TEST(Precedence, OfTwinsDoesNotHangOnTheOrderOfTheirLines) {
  Tackle tackle = twins_called("z", "a");
  std::ranges::reverse(tackle.lines);
  const std::vector<std::size_t> first = lines_of_first_twins(tackle);
  const auto first_of = [&](const std::string& id) {
    const auto line = std::ranges::find(tackle.lines, id, &Line::id) - tackle.lines.begin();
    return tackle.lines[first[static_cast<std::size_t>(line)]].id;
  };
  EXPECT_EQ(first_of("z_main"), "a_main");
  EXPECT_EQ(first_of("z_spare"), "a_spare");
  EXPECT_EQ(first_of("a_main"), "a_main");
  EXPECT_EQ(first_of("other_spare"), "other_spare");
}

TEST(Rigs, AreListedByPrecedence) {
  Tackle tackle = twins_called("z", "a");
  tackle.flies = rack::tackle().flies;
  std::vector<std::string> listed;
  for (const Rig& rig : rigs_for(tackle, Method::Dry)) listed.push_back(tackle.lines[rig.line].id);
  EXPECT_THAT(listed, ElementsAre("a_main", "z_main", "other_main", "a_spare", "z_spare", "other_spare"));
}

}  // namespace
}  // namespace floatwright
