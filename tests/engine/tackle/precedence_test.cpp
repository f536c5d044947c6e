// Of equals: a main spool before a spare one, then what they are, and names for twins alone; nothing by place in a file.
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

Tackle turned(Tackle tackle) {
  std::ranges::reverse(tackle.rods);
  std::ranges::reverse(tackle.lines);
  std::ranges::reverse(tackle.flies);
  std::ranges::reverse(tackle.tips);
  for (FlyClass& fly : tackle.flies) std::ranges::reverse(fly.uses);
  return tackle;
}

TEST(Precedence, IsOfMainSpoolsThenOfWhatTheyAre) {
  for (const Tackle& tackle : {rack::tackle(), turned(rack::tackle())}) {
    const Precedence order = precedence(tackle);
    EXPECT_THAT(ids(tackle.lines, order.lines),
                ElementsAre("thin", "nymph", "floating", "looped", "double", "leader", "tip3", "tip5", "tip7", "full"));
    EXPECT_THAT(ids(tackle.rods, order.rods), ElementsAre("thin", "five", "six", "seven"));
    EXPECT_THAT(ids(tackle.flies, order.flies), ElementsAre("dry", "plain", "nymph", "heavy", "weighted"));
    EXPECT_THAT(ids(tackle.tips, order.tips), ElementsAre("light", "heavy"));
  }
}

// Names that fall the other way change nothing between kinds.
TEST(Precedence, OfWhatDiffersInKindIsNotByName) {
  Tackle tackle = rack::tackle();
  for (std::size_t i = 0; i < tackle.flies.size(); ++i) tackle.flies[i].id = std::string(1, static_cast<char>('z' - i));
  const std::vector<std::size_t> places = precedence(rack::tackle()).flies;
  EXPECT_EQ(precedence(tackle).flies, places);
}

TEST(Precedence, OfTwinsIsByNameAndTheyStandSideBySide) {
  const Tackle tackle = twins_called("z", "a");
  EXPECT_THAT(ids(tackle.rods, precedence(tackle).rods), ElementsAre("other", "a", "z"));
  EXPECT_THAT(ids(tackle.lines, precedence(tackle).lines),
              ElementsAre("other_main", "a_main", "z_main", "other_spare", "a_spare", "z_spare"));
}

TEST(Precedence, OfTwinsCountsAsPeopleDo) {
  const Tackle tackle = twins_called("six_10", "six_2");
  EXPECT_THAT(ids(tackle.rods, precedence(tackle).rods), ElementsAre("other", "six_2", "six_10"));
}

// A fly of another name or size is another fly to its owner, though it sinks alike.
TEST(Precedence, TakesFliesForTwinsOnlyWhereNothingElseDiffers) {
  Tackle tackle = rack::tackle();
  const FlyClass nymph = tackle.flies[rack::kNymph];
  tackle.flies = {nymph, nymph, nymph};
  tackle.flies[0].id = "c";
  tackle.flies[1].id = "b", tackle.flies[1].size = "14";
  tackle.flies[2].id = "a";
  EXPECT_THAT(ids(tackle.flies, precedence(tackle).flies), ElementsAre("b", "a", "c"));
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
  EXPECT_THAT(listed, ElementsAre("other_main", "a_main", "z_main", "other_spare", "a_spare", "z_spare"));
}

}  // namespace
}  // namespace floatwright
