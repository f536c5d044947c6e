#include <gmock/gmock.h>

#include <functional>
#include <limits>
#include <ostream>

#include "engine/river/graph.hpp"
#include "tests/engine/river/lantern.hpp"

namespace floatwright {
namespace {

using ::testing::IsEmpty;

// What is wrong after one thing was spoiled in a river that is right: "E /pointer" or "W /pointer", in order.
std::vector<std::string> problems_after(const std::function<void(River&)>& spoil) {
  River river = lantern_river();
  spoil(river);
  std::vector<std::string> found;
  for (const auto& p : river_problems(river)) {
    EXPECT_FALSE(p.found.empty() || p.allowed.empty() || p.mend.empty()) << p.pointer;
    found.push_back((p.warning ? "W " : "E ") + p.pointer);
  }
  return found;
}

struct Spoilt {
  std::string name;
  std::function<void(River&)> spoil;
  std::vector<std::string> expected;
};

std::ostream& operator<<(std::ostream& out, const Spoilt& spoilt) { return out << spoilt.name; }

std::string name_of(const ::testing::TestParamInfo<Spoilt>& spoilt) { return spoilt.param.name; }

class RiverProblems : public ::testing::TestWithParam<Spoilt> {};

TEST_P(RiverProblems, AreFoundWhereTheyStand) { EXPECT_EQ(problems_after(GetParam().spoil), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Identity, RiverProblems,
    ::testing::Values(
        Spoilt{"AccessIdTwice", [](River& r) { r.accesses[3].id = "mill"; }, {"E /accesses/3/id"}},
        Spoilt{"GaugeIdTwice", [](River& r) { r.gauges[2].id = "heron"; }, {"E /gauges/2/id"}},
        Spoilt{"StationTwice", [](River& r) { r.gauges[2].station = "usgs:heron"; }, {"E /gauges/2/station"}},
        Spoilt{"DriveToNowhere",
               [](River& r) {
                 r.accesses[0].to_take_out = {{"mil", minutes(20)}};
               },
               {"E /accesses/0/to_take_out/mil"}},
        Spoilt{"DriveToAnOddId",
               [](River& r) {
                 r.accesses[0].to_take_out = {{"a/b~c", minutes(20)}};
               },
               {"E /accesses/0/to_take_out/a~1b~0c"}},
        Spoilt{"NegativeDrive",
               [](River& r) {
                 r.accesses[0].to_take_out = {{"mill", minutes(-20)}};
               },
               {"E /accesses/0/to_take_out/mill"}},
        Spoilt{"UnknownTributaryGauge",
               [](River& r) { r.tributaries[0].gauge = "elder"; },
               {"E /tributaries/0/gauge", "W /gauges/1"}},
        Spoilt{"TributaryGaugeOnTheStem",
               [](River& r) { r.tributaries[0].gauge = "ferry"; },
               {"E /tributaries/0/gauge", "W /gauges/1"}},
        Spoilt{"UnknownSideChannel",
               [](River& r) { r.reaches[2].in_side_channel = "cotton"; },
               {"E /reaches/2/in_side_channel"}},
        Spoilt{"OneAccess",
               [](River& r) {
                 r.accesses.resize(1);
                 r.accesses[0].to_take_out.clear();
               },
               {"E /accesses"}},
        Spoilt{"NoGaugeOnTheStem", [](River& r) { r.gauges = {r.gauges[1]}; }, {"E /gauges", "W /dams/0"}}),
    name_of);

INSTANTIATE_TEST_SUITE_P(
    Places, RiverProblems,
    ::testing::Values(
        Spoilt{"HazardOffTheRiver", [](River& r) { r.hazards[0].place = river_mile(12.0); }, {"E /hazards/0"}},
        Spoilt{"SpotAboveTheTop", [](River& r) { r.spots[0].place = river_mile(49.5); }, {"E /spots/0"}},
        Spoilt{"TributaryOffTheRiver",
               [](River& r) { r.tributaries[0].joins_at = river_mile(3.0); },
               {"E /tributaries/0"}},
        Spoilt{"ClosureElsewhere",
               [](River& r) {
                 r.closures = {{river_mile(9.0), river_mile(8.0), {}, {}, {}, "", ""}};
               },
               {"W /closures/0"}},
        Spoilt{"SplitAtTheTop", [](River& r) { r.side_channels[0].leaves = river_mile(49.0); }, {"E /side_channels/0"}},
        Spoilt{"TwoGaugesInOnePlace", [](River& r) { r.gauges[2].place = river_mile(45.2); }, {"E /gauges/2"}},
        Spoilt{"TwoRiversInOneFile",
               [](River& r) {
                 r.accesses.push_back(access("ford", "Ford on another river", 260.0));
                 r.accesses.push_back(access("bridge", "Bridge on another river", 250.0));
               },
               {"W /accesses/0", "W /notes", "W /notes"}},
        Spoilt{
            "TwoAccessesInOnePlace", [](River& r) { r.accesses.push_back(access("b", "B", 34.4)); }, {"E /accesses/5"}},
        Spoilt{"LatitudeAndLongitudeExchanged",
               [](River& r) {
                 r.accesses[1].at = GeoPoint{-111.2, 45.1};
               },
               {"E /accesses/1"}}),
    name_of);

INSTANTIATE_TEST_SUITE_P(
    Extents, RiverProblems,
    ::testing::Values(
        Spoilt{"NoteUpstream", [](River& r) { std::swap(r.notes[1].from, r.notes[1].to); }, {"E /notes/1"}},
        Spoilt{"ReachWithoutLength", [](River& r) { r.reaches[0].to = r.reaches[0].from; }, {"E /reaches/0"}},
        Spoilt{"OverlappingReaches", [](River& r) { r.reaches[1].from = river_mile(44.5); }, {"E /reaches/1"}},
        Spoilt{"LakeWithOneEnd", [](River& r) { r.lakes[0].to.reset(); }, {"E /lakes/0"}},
        Spoilt{"OverlappingWaveTimes",
               [](River& r) {
                 r.wave_times = {{river_mile(46), river_mile(30), cubic_feet_per_second(1800), hours(5)},
                                 {river_mile(32), river_mile(28), cubic_feet_per_second(1800), hours(1)}};
               },
               {"E /wave_times/1"}},
        Spoilt{"ReachBeyondItsSideChannel", [](River& r) { r.reaches[2].to = river_mile(36.0); }, {"E /reaches/2"}},
        Spoilt{"SideChannelThatReturnsUpstream",
               [](River& r) { std::swap(r.side_channels[0].leaves, r.side_channels[0].returns); },
               {"E /side_channels/0"}},
        Spoilt{"SideChannelWithoutLength",
               [](River& r) { r.side_channels[0].returns = r.side_channels[0].leaves; },
               {"E /reaches/2", "E /side_channels/0"}}),
    name_of);

INSTANTIATE_TEST_SUITE_P(
    FlowsAndWaters, RiverProblems,
    ::testing::Values(
        Spoilt{"ShareOverOne",
               [](River& r) { r.side_channels[0].share_by_flow[1].share = 25; },
               {"E /side_channels/0/share_by_flow/1"}},
        Spoilt{"SharesOutOfOrder",
               [](River& r) { std::swap(r.side_channels[0].share_by_flow[0], r.side_channels[0].share_by_flow[1]); },
               {"E /side_channels/0/share_by_flow/1"}},
        Spoilt{"SharesThatDryTheStemTogether",
               [](River& r) {
                 r.side_channels[0].share_by_flow[1].share = 0.6;
                 r.side_channels.push_back(
                     {"slough", "Slough", river_mile(38.0), river_mile(36.0), {{cubic_feet_per_second(800), 0.5}}});
               },
               {"E /side_channels/1/share_by_flow"}},
        Spoilt{"TributaryFarLargerThanAtItsGauge",
               [](River& r) { r.gauges[1].drainage_area = square_miles(60); },
               {"W /tributaries/0"}},
        Spoilt{"AreaOfNought", [](River& r) { r.tributaries[0].drainage_area = Area{}; }, {"E /tributaries/0"}},
        Spoilt{"NoShare", [](River& r) { r.side_channels[0].share_by_flow.clear(); }, {"W /side_channels/0"}},
        Spoilt{"AreaThatShrinks", [](River& r) { r.gauges[2].drainage_area = square_miles(900); }, {"E /gauges/2"}},
        Spoilt{"TributaryLargerThanTheGain",
               [](River& r) { r.tributaries[0].drainage_area = square_miles(400); },
               {"W /gauges/2"}},
        Spoilt{"DamNobodySpeaksFor", [](River& r) { r.gauges[0].place = river_mile(30.0); }, {"W /dams/0"}},
        Spoilt{"LimitsExchanged",
               [](River& r) {
                 r.boat_limits = {cubic_feet_per_second(5000), cubic_feet_per_second(600)};
               },
               {"E /boat_limits"}},
        Spoilt{"PortageOfUnknownLength", [](River& r) { r.hazards[0].portage_time.reset(); }, {"W /hazards/0"}},
        Spoilt{"FishingTimeOverOne", [](River& r) { r.notes[0].waters[0].fishing_time = 0.53; }, {"E /notes/0/waters"}},
        Spoilt{"FishingTimeUnderOne", [](River& r) { r.notes[0].waters[0].fishing_time = 0.4; }, {"W /notes/0/waters"}},
        Spoilt{"DepthOfNought",
               [](River& r) { r.reaches[1].waters[0].notes[0].depth = Length{}; },
               {"E /reaches/1/waters/0"}},
        Spoilt{"DepthInInches",
               [](River& r) { r.reaches[1].waters[0].notes[0].depth = feet(54); },
               {"W /reaches/1/waters/0"}},
        Spoilt{"ChannelThatDoesNotAddUp",
               [](River& r) { r.reaches[0].channel[0].width = feet(300); },
               {"W /reaches/0/channel"}},
        Spoilt{"MeasurementThatDoesNotAddUpAmongSeveral",
               [](River& r) {
                 r.reaches[0].channel.push_back(r.reaches[0].channel[0]);
                 r.reaches[0].channel[1].width = feet(300);
               },
               {"W /reaches/0/channel/measurements/1"}},
        Spoilt{"SectionOfOnePoint",
               [](River& r) { r.reaches[0].sections = {{{{feet(0), feet(3)}}, 0.004, 0.04}}; },
               {"E /reaches/0/channel/sections/0/points"}},
        Spoilt{"SectionThatGoesBack",
               [](River& r) {
                 r.reaches[0].sections = {{{{feet(0), feet(3)}, {feet(20), feet(0)}, {feet(10), feet(3)}}, 0.004, 0.04}};
               },
               {"E /reaches/0/channel/sections/0/points/2"}},
        Spoilt{"SectionWithoutABank",
               [](River& r) {
                 r.reaches[0].sections = {{{{feet(0), feet(3)}, {feet(20), feet(1)}, {feet(30), feet(0)}}, 0.004, 0.04}};
               },
               {"E /reaches/0/channel/sections/0/points"}},
        Spoilt{"SectionWithoutSlope",
               [](River& r) {
                 r.reaches[0].sections = {{{{feet(0), feet(3)}, {feet(20), feet(0)}, {feet(30), feet(3)}}, {}, 0.04}};
               },
               {"E /reaches/0/channel/sections/0"}},
        Spoilt{"SectionWithoutRoughnessOnAFlatRiver",
               [](River& r) {
                 r.reaches[0].sections = {{{{feet(0), feet(3)}, {feet(20), feet(0)}, {feet(30), feet(3)}}, 0.0005, {}}};
               },
               {"W /reaches/0/channel/sections/0"}},
        Spoilt{"SlopeInFeetPerMile", [](River& r) { r.reaches[0].slope = 8.0; }, {"E /reaches/0/slope"}},
        Spoilt{"FloatTooFast", [](River& r) { r.notes[0].float_time = minutes(2.4); }, {"W /notes/0"}},
        Spoilt{"StretchNotedTwice", [](River& r) { r.notes.push_back(r.notes[0]); }, {"W /notes/4"}},
        Spoilt{"TwoDepthsAtOneFlow",
               [](River& r) {
                 auto& notes = r.notes[0].waters[0].notes;
                 notes.push_back(notes[0]);
                 notes[1].depth = 3.0 * notes[0].depth;
               },
               {"W /notes/0/waters/0"}},
        Spoilt{"ShallowerWithMoreFlow",
               [](River& r) {
                 auto& notes = r.notes[0].waters[0].notes;
                 notes.push_back(notes[0]);
                 notes[1].at_flow = 2.0 * notes[0].at_flow;
                 notes[1].depth = 0.9 * notes[0].depth;
               },
               {"W /notes/0/waters/0"}},
        Spoilt{"BoatOfNoFlowRange", [](River& r) { r.boat_limits = {}; }, {"W /boat_limits"}},
        Spoilt{"BoatOfNoMostFlow", [](River& r) { r.boat_limits.most_flow.reset(); }, {"W /boat_limits"}},
        Spoilt{"StretchNobodyDescribed", [](River& r) { r.notes.pop_back(); }, {"W /notes"}}),
    name_of);

TEST(ProblemsOfARiver, AreNoneInARiverThatIsRight) {
  EXPECT_THAT(problems_after([](River&) {}), IsEmpty());
}

TEST(ProblemsOfARiver, AllowFishingTimesRoundedToHundredths) {
  EXPECT_THAT(problems_after([](River& r) { r.notes[0].waters[0].fishing_time = 0.51; }), IsEmpty());
}

TEST(ProblemsOfARiver, AreToldAllAtOnce) {
  EXPECT_EQ(problems_after([](River& r) {
              r.accesses[3].id = "mill";
              r.hazards[0].place = river_mile(12.0);
              r.notes[0].waters[0].fishing_time = 0.9;
            }).size(),
            3u);
}

TEST(ProblemsOfARiver, SayWhatWasFoundAndHowToMendIt) {
  River river = lantern_river();
  std::swap(river.side_channels[0].leaves, river.side_channels[0].returns);
  const auto problems = river_problems(river);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].found,
            "side channel \"cottonwood_channel\" leaves at mile 37.4 and returns at mile 38.6: its water would run in "
            "a circle");
  EXPECT_EQ(problems[0].mend, "Exchange the two miles, or mend one.");
}

TEST(ProblemsOfARiver, OfALakeAloneAreNone) {
  River river;
  Lake lake;
  lake.id = "tarn";
  river.lakes = {lake};
  EXPECT_THAT(river_problems(river), IsEmpty());
}

TEST(ProblemsOfARiver, OfAnEmptyFileAreWhatIsMissing) {
  const auto problems = river_problems(River{});
  ASSERT_EQ(problems.size(), 2u);
  EXPECT_EQ(problems[0].pointer, "/gauges");
  EXPECT_EQ(problems[1].pointer, "/accesses");
}

TEST(ProblemsOfARiver, SurvivePlacesThatAreNoNumbers) {
  River river = lantern_river();
  river.hazards[0].place = RiverPlace::from_si(std::numeric_limits<double>::quiet_NaN());
  river.accesses[0].place = RiverPlace::from_si(std::numeric_limits<double>::infinity());
  EXPECT_FALSE(river_problems(river).empty());
}

}  // namespace
}  // namespace floatwright
