#include "adapters/in/files/river_file.hpp"

#include <fstream>
#include <iterator>

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;

// The smallest river: three lines of head, then what is asked for.
std::string river_with(const std::string& rest, const std::string& accesses = R"([
{ "id": "mill", "mile": 40.2 },
{ "id": "ferry", "name": "Old Ferry", "mile": 28.6 } ])") {
  return R"({ "schema_version": 1, "river": "Lantern River", "time_zone": "America/Denver",
"gauges": [ { "id": "cutbank", "station": "usgs:00000001", "mile": 41.0 } ],
"accesses": )" +
         accesses + rest + "}";
}

std::string note_with(const std::string& water) {
  return river_with(",\n\"notes\": [ { \"from\": \"mill\", \"to\": \"ferry\", \"at_flow_cfs\": 1000, \"waters\": [\n" +
                    water + "] } ]");
}

const Water& only_water(const ReadAnswer<ReadRiver>& read) { return read.value.river.notes.at(0).waters.at(0); }

ReadAnswer<ReadRiver> river_of(const std::string& text) { return read_text(text, read_river); }

TEST(RiverFile, ReadsTheSmallestRiver) {
  const auto read = river_of(river_with(""));
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_TRUE(read.value.all_places_read);
  ASSERT_THAT(read.value.river.accesses, SizeIs(2));
  EXPECT_EQ(read.value.river.accesses[0].name, "mill");
  EXPECT_NEAR(in_river_miles(read.value.river.accesses[0].place), 40.2, 1e-9);
}

TEST(RiverFile, ReadsTheDemoWithoutAProblem) {
  std::ifstream file(FLOATWRIGHT_SOURCE_DIR "/config/demo/river.json");
  const auto read = river_of(std::string(std::istreambuf_iterator<char>(file), {}));
  EXPECT_THAT(read.problems, IsEmpty());
  const River& river = read.value.river;
  EXPECT_THAT(river.reaches, SizeIs(10));
  EXPECT_THAT(river.notes, SizeIs(4));
  EXPECT_EQ(river.notes[0].from_name, "Heron Ramp");
  EXPECT_EQ(in_minutes(river.accesses[0].to_take_out.at("ferry")), 50.0);
  EXPECT_FALSE(river.gauges[1].place);
  EXPECT_FALSE(river.kilometres);
}

TEST(RiverFile, WatersInheritFlowAndDayFromTheirNote) {
  const auto read =
      river_of(river_with(R"(, "notes": [ { "from": "mill", "to_mile": 30, "at_flow_m3_s": 50, "seen_on": "2026-05-20",
      "waters": [ { "water": "run", "fishing_time": 1, "depth_m": 1.5, "surface_speed_m_s": 1.0, "source": "surveyed",
                    "notes": [ { "at_flow_m3_s": 20, "seen_on": "2026-08-01", "depth_m": 1.0, "surface_speed_m_s": 0.6 } ] } ] } ])"));
  ASSERT_THAT(read.problems, IsEmpty());
  const auto& notes = only_water(read).notes;
  ASSERT_THAT(notes, SizeIs(2));
  EXPECT_EQ(in_cubic_metres_per_second(notes[0].at_flow), 50.0);
  EXPECT_EQ(notes[0].seen_on, std::chrono::year(2026) / 5 / 20);
  EXPECT_EQ(notes[0].source, DepthSource::Surveyed);
  EXPECT_EQ(in_cubic_metres_per_second(notes[1].at_flow), 20.0);
  EXPECT_EQ(notes[1].seen_on, std::chrono::year(2026) / 8 / 1);
  EXPECT_EQ(read.value.river.notes[0].to_name, "mile 30");
}

std::string reach_with(const std::string& channel) {
  return river_with(R"(, "reaches": [ { "id": "r", "from_mile": 40, "to_mile": 39, "slope": 0.002, "waters": [],
"channel": )" + channel + "} ]");
}

TEST(RiverFile, ReadsOneMeasurementOfAChannelOrSeveral) {
  const auto one = river_of(reach_with(R"({ "at_flow_cfs": 1800, "width_ft": 150, "mean_depth_ft": 3.4, "mean_speed_ft_s": 3.5 })"));
  EXPECT_THAT(one.problems, IsEmpty());
  EXPECT_THAT(one.value.river.reaches.at(0).channel, SizeIs(1));
  const auto two = river_of(reach_with(R"({ "measurements": [
    { "at_flow_cfs": 1800, "width_ft": 150, "mean_depth_ft": 3.4, "mean_speed_ft_s": 3.5 },
    { "at_flow_m3_s": 20, "width_m": 40, "mean_depth_m": 0.7, "mean_speed_m_s": 0.71 } ] })"));
  EXPECT_THAT(two.problems, IsEmpty());
  ASSERT_THAT(two.value.river.reaches.at(0).channel, SizeIs(2));
  EXPECT_EQ(in_metres(two.value.river.reaches[0].channel[1].width), 40.0);
}

TEST(RiverFile, ReadsASurveyedSection) {
  const auto read = river_of(reach_with(R"({ "sections": [ { "roughness": 0.04, "points": [
    { "across_ft": 0, "height_ft": 5 }, { "across_ft": 60, "height_ft": -1.5 }, { "across_m": 40, "height_m": 2 } ] } ] })"));
  EXPECT_THAT(read.problems, IsEmpty());
  ASSERT_THAT(read.value.river.reaches.at(0).sections, SizeIs(1));
  const SurveyedSection& section = read.value.river.reaches[0].sections[0];
  ASSERT_THAT(section.points, SizeIs(3));
  EXPECT_NEAR(in_feet(section.points[1].height), -1.5, 1e-12);
  EXPECT_EQ(section.roughness, 0.04);
  EXPECT_FALSE(section.slope);
}

TEST(RiverFile, TellsAMeasurementBesideAList) {
  const auto read = river_of(reach_with(R"({ "at_flow_cfs": 1800, "measurements": [] })"));
  ASSERT_THAT(read.problems, SizeIs(1));
  EXPECT_EQ(read.problems[0].pointer, "/reaches/0/channel");
  EXPECT_THAT(river_of(reach_with(R"({ "measurements": [ { "at_flow_cfs": 1800 } ] })")).problems, SizeIs(3));
  EXPECT_THAT(river_of(reach_with(R"({ "sections": [ { "points": [ { "across_ft": 1 } ] } ] })")).problems, SizeIs(1));
}

// The mean over the depth is 6/7 of the surface speed under a 1/6 power law (its integral), about the 0.85 of gauging.
TEST(RiverFile, TurnsAMeanSpeedIntoTheSurfaceSpeedThatGoesWithIt) {
  const auto read =
      river_of(note_with(R"({ "water": "run", "fishing_time": 1, "depth_m": 1.5, "mean_speed_m_s": 0.6 })"));
  ASSERT_THAT(read.problems, IsEmpty());
  EXPECT_THAT(in_metres_per_second(only_water(read).notes.at(0).surface_speed), DoubleNear(0.7, 0.005));
}

// Over cobble of 3.5 x 0.15 m of roughness, two roughnesses deep, the mean is 1 - 1/ln 60 of the surface speed.
TEST(RiverFile, TurnsAMeanSpeedOverItsBed) {
  const auto read = river_of(river_with(R"(, "reaches": [ { "id": "r", "from_mile": 40, "to_mile": 39, "bed": "cobble", "waters":
    [ { "water": "run", "fishing_time": 1, "at_flow_cfs": 1800, "depth_m": 1.05, "mean_speed_m_s": 0.6 } ] } ])"));
  ASSERT_THAT(read.problems, IsEmpty());
  EXPECT_THAT(in_metres_per_second(read.value.river.reaches.at(0).waters.at(0).notes.at(0).surface_speed),
              DoubleNear(0.6 / 0.755760, 1e-4));
}

TEST(RiverFile, RefusesASpeedThatDoesNotSayWhich) {
  const auto read = river_of(note_with(R"({ "water": "run", "fishing_time": 1, "depth_m": 1.5, "speed_m_s": 0.6 })"));
  EXPECT_THAT(read.problems, Contains(AllOf(StandsAt(7, "/notes/0/waters/0"), Finds("no speed"))));
  EXPECT_THAT(read.problems, Contains(AllOf(Finds("unknown key \"speed_m_s\""), Mends("_speed_m_s"))));
}

TEST(RiverFile, RefusesBothSpeedsAtOnce) {
  const auto read = river_of(note_with(
      R"({ "water": "run", "fishing_time": 1, "depth_m": 1.5, "mean_speed_m_s": 0.6, "surface_speed_ft_s": 2 })"));
  EXPECT_THAT(read.problems, ElementsAre(Finds("a surface speed and a mean speed at once")));
}

TEST(RiverFile, CountsDownFromTheSourceWhenToldTo) {
  const auto read =
      river_of(river_with(R"(, "mile_zero": "source", "notes": [ { "from": "a", "to": "b", "at_flow_cfs": 1000 } ])",
                          R"([ { "id": "a", "km": 10 }, { "id": "b", "km": 25 }, { "id": "c", "km": 26 } ])"));
  EXPECT_THAT(read.problems, IsEmpty());
  const River& river = read.value.river;
  EXPECT_TRUE(river.kilometres);
  EXPECT_TRUE(river.miles_from_source);
  EXPECT_EQ(in_river_kilometres(river.accesses[0].place), -10.0);
  EXPECT_GT(river.notes[0].from, river.notes[0].to);
}

TEST(RiverFile, RefusesAStretchThatRunsUphill) {
  const auto read =
      river_of(river_with(", \"notes\": [\n{ \"from\": \"ferry\", \"to\": \"mill\", \"at_flow_cfs\": 1 } ]"));
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(6, "/notes/0"), Finds("not downstream"))));
}

TEST(RiverFile, TurnsAClosureTypedTheOtherWayRound) {
  const auto read = river_of(river_with(R"(, "closures": [ { "from_mile": 30, "to_mile": 35, "why": "spawning" } ])"));
  ASSERT_THAT(read.problems, IsEmpty());
  EXPECT_GT(read.value.river.closures[0].from, read.value.river.closures[0].to);
}

TEST(RiverFile, NamesTheNearestAccess) {
  const auto read = river_of(river_with(R"(, "notes": [ { "from": "mil", "to": "ferry", "at_flow_cfs": 1000 } ])"));
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(5, "/notes/0/from"), Mends("\"mill\""))));
  EXPECT_FALSE(read.value.all_places_read);
}

TEST(RiverFile, TellsSeveralProblemsAtOnceEachOnItsLine) {
  const auto read = river_of(R"({ "schema_version": 1, "river": "Lantern River",
"time_zone": "America/Lantern",
"altitud_ft": 4900,
"fish": ["cuthroat"],
"gauges": [ { "id": "a", "station": "usgz:1" },
            { "id": "b", "station": "00000001", "mile": "forty" } ],
"accesses": [ { "id": "x", "mile": 40, "lat": 45.0 },
 7,
 { "id": "y", "mile": -3, "to_take_out": { "z": 20 } } ],
"hatches": [ { "name": "caddis", "from_date": "05-32", "to_date": "07-15", "from_hour": "16:00", "to_hour": "25:00" } ]
})");
  EXPECT_THAT(read.problems,
              testing::UnorderedElementsAre(
                  StandsAt(2, "/time_zone"), AllOf(StandsAt(3, "/altitud_ft"), Mends("altitude_ft")),
                  AllOf(StandsAt(4, "/fish"), Mends("cutthroat")),
                  AllOf(StandsAt(5, "/gauges/0/station"), Mends("usgs")), StandsAt(6, "/gauges/1/station"),
                  StandsAt(6, "/gauges/1/mile"), AllOf(StandsAt(7, "/accesses/0"), Finds("lon")),
                  StandsAt(8, "/accesses/1"), StandsAt(9, "/accesses/2/mile"), StandsAt(9, "/accesses/2/to_take_out/z"),
                  StandsAt(10, "/hatches/0/from_date"), StandsAt(10, "/hatches/0/to_hour")));
}

TEST(RiverFile, KeepsItemsInTheirPlacesWhenOneIsNoObject) {
  const auto read = river_of(river_with("", R"([ 7, { "id": "b", "mile": 2 } ])"));
  ASSERT_THAT(read.value.river.accesses, SizeIs(2));
  EXPECT_EQ(read.value.river.accesses[1].id, "b");
}

TEST(RiverFile, RefusesSharesOfTimeOverOne) {
  const auto read =
      river_of(note_with(R"({ "water": "run", "fishing_time": 0.7 }, { "water": "pool", "fishing_time": 0.4 })"));
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(6, "/notes/0/waters"), Finds("1.1"))));
}

TEST(RiverFile, RefusesWhatIsNoObject) {
  for (const char* text : {"[]", "7", "null", "\"river\""})
    EXPECT_THAT(river_of(text).problems, ElementsAre(StandsAt(1, ""))) << text;
}

}  // namespace
}  // namespace floatwright
