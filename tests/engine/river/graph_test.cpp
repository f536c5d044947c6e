#include "engine/river/graph.hpp"

#include <gmock/gmock.h>

#include "engine/river/flow_order.hpp"
#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

const River kRiver = lantern_river();
const RiverGraph kGraph = river_graph(kRiver);

const Reach& reach(const std::string& id, const RiverGraph& graph = kGraph) {
  const auto found = std::ranges::find(graph.reaches, id, &Reach::id);
  EXPECT_NE(found, graph.reaches.end()) << id;
  return found == graph.reaches.end() ? graph.reaches.front() : *found;
}

std::vector<std::string> ids(const std::vector<std::size_t>& indices) {
  std::vector<std::string> list;
  for (const auto i : indices) list.push_back(kGraph.reaches[i].id);
  return list;
}

River two_accesses_and_a_gauge() {
  River river;
  river.gauges = {gauge("cutbank", "Cutbank", 41.0, 500)};
  river.accesses = {access("ferry", "Old Ferry", 28.6), access("mill", "Mill Bridge", 40.2)};
  return river;
}

TEST(RiverGraph, IsMadeFromOneGaugeAndTwoAccesses) {
  const RiverGraph graph = river_graph(two_accesses_and_a_gauge());
  ASSERT_EQ(graph.reaches.size(), 2u);
  EXPECT_EQ(graph.reaches[0].id, "mile 41.0-40.2");
  EXPECT_EQ(graph.reaches[1].id, "mile 40.2-28.6");
  EXPECT_THAT(graph.reaches[1].upstream, ElementsAre(0u));
}

TEST(RiverGraph, NamesAGaugeAtTheTopAsTheStartOfItsReach) {
  const RiverGraph graph = river_graph(two_accesses_and_a_gauge());
  EXPECT_EQ(graph.gauge_reach[0], std::nullopt);
  EXPECT_EQ(graph.reaches[0].gauge_at_start, 0u);
}

TEST(RiverGraph, IsCutAtEveryStationFromTheTopDown) {
  std::vector<std::string> names;
  for (const auto& station : kGraph.stations) names.push_back(station.name);
  EXPECT_THAT(names, ElementsAre("head of Heron Lake", "Heron Dam", "Heron Ramp", "Lantern below Heron Dam",
                                 "mile 44.1", "Mill ditch", "Mill Bridge", "head of Cottonwood Channel",
                                 "Cottonwood Bend", "foot of Cottonwood Channel", "Alder Creek", "Alder Bar",
                                 "The Ledge", "Lantern at Old Ferry", "Old Ferry", "Quarry Landing"));
}

TEST(RiverGraph, SplitsAndRejoinsAtASideChannel) {
  const Reach& branch = reach("mile 38.6-37.4/branch");
  EXPECT_FALSE(branch.main_thread);
  EXPECT_EQ(branch.side_channel, 0u);
  EXPECT_EQ(branch.name, "Cottonwood Channel");
  EXPECT_THAT(ids(branch.upstream), ElementsAre("mile 40.2-38.6"));
  EXPECT_EQ(reach("mile 38.6-38.0").splits_off, 0u);
  EXPECT_EQ(reach("mile 38.0-37.4").splits_off, std::nullopt);
  EXPECT_THAT(ids(reach("mile 37.4-35.0").upstream),
              ::testing::UnorderedElementsAre("mile 38.0-37.4", "mile 38.6-37.4/branch"));
}

TEST(RiverGraph, KnowsWhatStandsAtTheEndsOfAReach) {
  EXPECT_EQ(reach("mile 45.6-45.2").gauge_at_end, 0u);
  EXPECT_EQ(reach("mile 30.4-28.9").gauge_at_end, 2u);
  EXPECT_EQ(reach("mile 49.0-46.0").dam_at_end, 0u);
  EXPECT_EQ(reach("mile 46.0-45.6").dam_at_start, 0u);
  EXPECT_THAT(reach("mile 35.0-34.4").tributaries_at_start, ElementsAre(0u));
  EXPECT_THAT(reach("mile 41.5-40.2").diversions_at_start, ElementsAre(0u));
  EXPECT_EQ(reach("mile 49.0-46.0").lake, 0u);
  EXPECT_EQ(reach("mile 46.0-45.6").lake, std::nullopt);
}

TEST(RiverGraph, FindsTheReachThatEndsAtEachGaugeOfTheStem) {
  ASSERT_EQ(kGraph.gauge_reach.size(), 3u);
  EXPECT_EQ(kGraph.reaches[kGraph.gauge_reach[0].value()].id, "mile 45.6-45.2");
  EXPECT_EQ(kGraph.gauge_reach[1], std::nullopt);  // on Alder Creek
  EXPECT_EQ(kGraph.reaches[kGraph.gauge_reach[2].value()].id, "mile 30.4-28.9");
}

TEST(RiverGraph, NamesAReachAfterItsClosestDescription) {
  EXPECT_EQ(reach("mile 45.6-45.2").name, "Tailrace");
  EXPECT_EQ(reach("mile 44.1-41.5").name, "Heron Ramp to Mill Bridge");
  EXPECT_EQ(reach("mile 46.0-45.6").name, "mile 46.0-45.6");
}

TEST(RiverGraph, GivesAReachItsOwnWatersBeforeThoseOfItsStretch) {
  EXPECT_EQ(waters_of(kRiver, reach("mile 45.6-45.2"))[0].type, WaterType::Riffle);
  EXPECT_EQ(waters_of(kRiver, reach("mile 44.1-41.5")).size(), 3u);
  EXPECT_THAT(waters_of(kRiver, reach("mile 46.0-45.6")), IsEmpty());
  EXPECT_EQ(bed_of(kRiver, reach("mile 45.6-45.2")), Bed::Cobble);
  EXPECT_EQ(bed_of(kRiver, reach("mile 44.1-41.5")), Bed::Unknown);
}

TEST(RiverGraph, TakesTheShorterOfTwoNotesThatCoverAReach) {
  River river = lantern_river();
  river.notes.push_back(note(river.accesses[0], river.accesses[4], 12.0, {}));
  EXPECT_EQ(reach("mile 44.1-41.5", river_graph(river)).note, 0u);
}

double area_mi2(const std::string& id) { return in_square_miles(reach(id).drainage_area.value()); }

TEST(DrainageArea, IsThatOfTheGaugeAtTheGauge) {
  EXPECT_NEAR(area_mi2("mile 45.6-45.2"), 980, 1e-6);
  EXPECT_NEAR(area_mi2("mile 30.4-28.9"), 1290, 1e-6);
}

TEST(DrainageArea, GrowsEvenlyBetweenGaugesAndJumpsAtATributary) {
  // 310 mi2 gained over 16.3 mi, 225 of them from Alder Creek: 85/16.3 mi2 a mile.
  EXPECT_NEAR(area_mi2("mile 41.5-40.2"), 980 + 5.0 * 85 / 16.3, 1e-6);
  EXPECT_NEAR(area_mi2("mile 37.4-35.0"), 980 + 10.2 * 85 / 16.3, 1e-6);
  EXPECT_NEAR(area_mi2("mile 35.0-34.4"), 980 + 10.8 * 85 / 16.3 + 225, 1e-6);
}

TEST(DrainageArea, GoesOnAtTheSameRateBeyondTheOuterGauges) {
  EXPECT_NEAR(area_mi2("mile 28.6-22.4"), 1290 + 6.5 * 85 / 16.3, 1e-6);
  EXPECT_NEAR(area_mi2("mile 46.0-45.6"), 980 - 0.4 * 85 / 16.3, 1e-6);
}

TEST(DrainageArea, IsUnknownWithOneGaugeButAtTheGauge) {
  River river = lantern_river();
  river.gauges[2].drainage_area.reset();
  const RiverGraph graph = river_graph(river);
  EXPECT_EQ(reach("mile 28.6-22.4", graph).drainage_area, std::nullopt);
  EXPECT_TRUE(reach("mile 45.6-45.2", graph).drainage_area.has_value());
}

TEST(Between, WalksTheMainThreadFromAccessToAccess) {
  EXPECT_THAT(ids(kGraph.between(river_mile(40.2), river_mile(34.4))),
              ElementsAre("mile 40.2-38.6", "mile 38.6-38.0", "mile 38.0-37.4", "mile 37.4-35.0", "mile 35.0-34.4"));
}

TEST(Between, IsEmptyUpstream) { EXPECT_THAT(kGraph.between(river_mile(34.4), river_mile(40.2)), IsEmpty()); }

TEST(Between, HoldsReachesThatAreCutByItsEnds) {
  EXPECT_THAT(ids(kGraph.between(river_mile(39.0), river_mile(38.2))), ElementsAre("mile 40.2-38.6", "mile 38.6-38.0"));
}

TEST(ReachAt, HoldsItsUpperEnd) {
  EXPECT_EQ(kGraph.reaches[kGraph.at(river_mile(40.2)).value()].id, "mile 40.2-38.6");
  EXPECT_EQ(kGraph.reaches[kGraph.at(river_mile(39.0)).value()].id, "mile 40.2-38.6");
  EXPECT_EQ(kGraph.reaches[kGraph.at(river_mile(38.6)).value()].id, "mile 38.6-38.0");
}

TEST(ReachAt, IsTheLastOneAtTheMouthAndNoneBeyond) {
  EXPECT_EQ(kGraph.reaches[kGraph.at(river_mile(22.4)).value()].id, "mile 28.6-22.4");
  EXPECT_EQ(kGraph.at(river_mile(22.0)), std::nullopt);
  EXPECT_EQ(kGraph.at(river_mile(50.0)), std::nullopt);
}

TEST(RiverGraph, CountsFromTheSourceWhereTheFileDoes) {
  River river = two_accesses_and_a_gauge();
  river.miles_from_source = true;
  river.gauges[0].place = river_mile(-1.0);
  river.accesses[0].place = river_mile(-14.25);
  river.accesses[1].place = river_mile(-3.0);
  EXPECT_EQ(river_graph(river).reaches[1].id, "mile 3.0-14.25");
}

TEST(RiverGraph, OfNothingIsEmpty) {
  const RiverGraph graph = river_graph(River{});
  EXPECT_THAT(graph.reaches, IsEmpty());
  EXPECT_EQ(graph.at(river_mile(1.0)), std::nullopt);
}

TEST(FlowOrder, PutsEveryPieceAfterWhatFeedsIt) {
  const auto order = flow_order(4, {{2, 0}, {3, 2}, {3, 1}, {1, 0}}).order;
  ASSERT_EQ(order.size(), 4u);
  EXPECT_EQ(order.front(), 3u);
  EXPECT_EQ(order.back(), 0u);
}

TEST(FlowOrder, NamesThePiecesOnACircle) {
  const auto result = flow_order(4, {{0, 1}, {1, 2}, {2, 1}, {2, 3}});
  EXPECT_THAT(result.circle, ElementsAre(1u, 2u));
  EXPECT_THAT(result.order, IsEmpty());
}

}  // namespace
}  // namespace floatwright
