// The outfitter's day: one list of boats, a page a boat, one pool of rods. The readers that judge the outputs are packages
// that are not ours: poppler-utils, python3-jsonschema, python3-icalendar, python3-gpxpy.
#include <gmock/gmock.h>

#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using Json = nlohmann::json;

const std::string kThreeBoats = (kRoot / "config/demo/boats.json").string();
const std::string kTwelveBoats = (kRoot / "fixtures/outfitter/boats.json").string();

Json plans_of(const DemoCopy& demo, const std::string& boats) {
  const auto ran = demo.plan({"--boats", boats, "--as", "json"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  return Json::parse(ran.out);
}

// Each rod of the stretches that are floated, with how many boats have it.
std::map<std::string, int> rods_of(const Json& plans) {
  std::map<std::string, int> boats_with;
  for (const auto& boat : plans.at("boats"))
    for (const auto& stretch : boat.at("stretches"))
      if (stretch.at("verdict") != "ruled_out" && &stretch == &boat.at("stretches").at(0))
        for (const auto& rod : stretch.at("rods")) ++boats_with[rod.at("rod").get<std::string>()];
  return boats_with;
}

void expect_a_rod_in_one_boat_only(const Json& plans) {
  const auto rods = rods_of(plans);
  EXPECT_FALSE(rods.empty());
  for (const auto& [rod, boats] : rods) EXPECT_EQ(boats, 1) << rod;
}

std::string read_by_python(const std::string& script, const std::filesystem::path& file) {
  const auto ran = run_program({"/usr/bin/python3", "-c", script, file.string()});
  return ran.out + ran.err;
}

TEST(ThreeBoats, HaveAPageEachWithBoatGuideAndAnglersInItsHead) {
  const DemoCopy demo;
  const auto ran = demo.plan({"--boats", kThreeBoats});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.err, "");
  EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\f'), 2);
  EXPECT_THAT(ran.out, AllOf(HasSubstr("Boat 1   Wren, 2 anglers   PUT IN 07:30"),
                             HasSubstr("Boat 2   Dipper, 2 anglers   PUT IN 08:00"), HasSubstr("Boat 3   Teal, 1 angler   PUT IN")));
}

TEST(ThreeBoats, ShareOnePoolOfRods) { expect_a_rod_in_one_boat_only(plans_of(DemoCopy{}, kThreeBoats)); }

TEST(ThreeBoats, KeepToTheSchema) {
  const DemoCopy demo;
  const auto file = demo.folder() / "plans.json";
  write_text(file, demo.plan({"--boats", kThreeBoats, "--as", "json"}).out);
  const std::string judge =
      "import json,sys,jsonschema\n"
      "V=jsonschema.Draft202012Validator(json.load(open('" + (kRoot / "config/schemas/plan.schema.json").string() + "')))\n"
      "plans=json.load(open(sys.argv[1]))\n"
      "print(plans['kind'],len(plans['boats']),[e.message[:200] for e in V.iter_errors(plans)][:5])\n"
      "plans['boats'][0]['colour']='green'\n"
      "print(len(list(V.iter_errors(plans)))>0)\n";
  EXPECT_EQ(read_by_python(judge, file), "float_plans 3 []\nTrue\n");
}

TEST(ThreeBoats, AreWrittenAsEveryKindOfFile) {
  const DemoCopy demo;
  const auto out = demo.folder() / "out";
  const auto ran = demo.plan({"--boats", kThreeBoats, "--as", "plan,sheet,ashore,json,calendar,map", "--out", out.string()});
  ASSERT_EQ(ran.exit_code, 0) << ran.err;
  const auto info = run_program({"/usr/bin/pdfinfo", (out / "2027-05-14-sheet.pdf").string()});
  EXPECT_THAT(info.out, HasSubstr("Pages:           3\n"));
  const auto words = run_program({"/usr/bin/pdftotext", "-layout", (out / "2027-05-14-sheet.pdf").string(), "-"}).out;
  EXPECT_THAT(words, AllOf(HasSubstr("Boat 1"), HasSubstr("Dipper, 2 anglers"), HasSubstr("Teal, 1 angler")));
  EXPECT_THAT(text_of(out / "2027-05-14-ashore.txt"), AllOf(HasSubstr("BOAT   Boat 1"), HasSubstr("555-0163"), HasSubstr("Ada")));
}

TEST(ThreeBoats, AreOneCalendarWithAnEventEachThatALaterPlanReplaces) {
  const DemoCopy demo;
  const std::string read =
      "import sys,icalendar\n"
      "c=icalendar.Calendar.from_ical(open(sys.argv[1],'rb').read())\n"
      "e=[p for p in c.walk() if p.name=='VEVENT']\n"
      "print('\\n'.join(str(x['SUMMARY']).split(',')[0]+' '+str(x['UID']) for x in e))\n";
  const auto uids = [&](const std::string& boats) {
    const auto file = demo.folder() / "plan.ics";
    write_text(file, demo.plan({"--boats", boats, "--as", "calendar"}).out);
    return read_by_python(read, file);
  };
  const auto first = uids(kThreeBoats);
  std::set<std::string> seen;
  std::istringstream lines(first);
  for (std::string line; std::getline(lines, line);) seen.insert(line.substr(line.rfind(' ')));
  EXPECT_EQ(seen.size(), 3u) << first;
  const auto other_guide = demo.folder() / "boats.json";
  auto text = text_of(kThreeBoats);
  write_text(other_guide, text.replace(text.find("\"Teal\""), 6, "\"Rail\""));
  EXPECT_EQ(uids(other_guide.string()), first);
}

TEST(ThreeBoats, AreOneMapWithEveryPlaceOnce) {
  const DemoCopy demo;
  const auto map = Json::parse(demo.plan({"--boats", kThreeBoats, "--as", "map"}).out);
  std::set<std::string> places;
  for (const auto& feature : map.at("features")) {
    const auto& told = feature.at("properties");
    EXPECT_TRUE(places.insert(told.at("kind").get<std::string>() + told.at("name").get<std::string>()).second) << told.at("name");
    if (told.at("id") == "bar")
      EXPECT_THAT(told.at("part").get<std::string>(), AllOf(HasSubstr("Boat 2: put in"), HasSubstr("Boat 1: on the float")));
    if (told.at("kind") == "access") {
      EXPECT_THAT(told.at("description").get<std::string>(), HasSubstr("."));
    }
  }
  EXPECT_EQ(map.at("features").size(), 9u);  // five accesses, three hazards, one spot
  const auto out = demo.folder() / "out";
  ASSERT_EQ(demo.plan({"--boats", kThreeBoats, "--as", "map", "--out", out.string()}).exit_code, 0);
  EXPECT_EQ(read_by_python("import sys,gpxpy\nprint(len(gpxpy.parse(open(sys.argv[1])).waypoints))\n", out / "2027-05-14-map.gpx"), "9\n");
}

TEST(ThreeBoats, LeaveAPlanWithoutThemAsItWas) {
  const DemoCopy demo;
  const auto plan = Json::parse(demo.plan({"--as", "json"}).out);
  EXPECT_EQ(plan.at("kind"), "float_plan");
  EXPECT_FALSE(plan.contains("boat"));
}

TEST(TwelveBoats, OfFiveRodsSayWhichHaveNone) {
  const DemoCopy demo;
  const auto plans = plans_of(demo, kTwelveBoats);
  ASSERT_EQ(plans.at("boats").size(), 12u);
  expect_a_rod_in_one_boat_only(plans);
  const auto rods = rods_of(plans);
  EXPECT_EQ(rods.size(), 4u);
  EXPECT_EQ(rods.count("thin"), 0u) << "its line is for a tight line, which none of these boats fishes";
  EXPECT_THAT(demo.plan({"--boats", kTwelveBoats}).out, HasSubstr("No rod is left in the pool that fishes here: this boat has none."));
}

TEST(TwelveBoats, OfAnOutfittersRackShareItOut) {
  const DemoCopy demo;
  write_text(demo.config() / "tackle.json", text_of(kRoot / "fixtures/outfitter/tackle.json"));
  const auto plans = plans_of(demo, kTwelveBoats);
  expect_a_rod_in_one_boat_only(plans);
  EXPECT_GE(rods_of(plans).size(), 12u);
}

TEST(TwelveBoats, HaveTheSamePagesEveryTime) {
  const DemoCopy demo;
  EXPECT_EQ(demo.plan({"--boats", kTwelveBoats}).out, demo.plan({"--boats", kTwelveBoats}).out);
}

// A boat of twelve that can't be off the water in time still has its page.
TEST(TwelveBoats, TellARuledOutStretchOnThePageOfItsBoat) {
  const DemoCopy demo;
  auto text = text_of(kTwelveBoats);
  const std::string early = R"("to": "ferry", "launch": "07:30", "anglers": 2, "rods_aboard": 2})";
  const auto last = text.rfind(early);
  ASSERT_NE(last, std::string::npos);
  const auto file = demo.folder() / "boats.json";
  write_text(file, text.replace(text.find("07:30", last), 5, "16:00"));
  const auto out = demo.plan({"--boats", file.string()}).out;
  EXPECT_THAT(out, HasSubstr("NO PLAN: Lantern River"));
  EXPECT_THAT(out, HasSubstr("BOAT   Boat 12   Siskin"));
}

struct Mistake {
  std::string from, to, told;
};
class BadBoats : public ::testing::TestWithParam<Mistake> {};
TEST_P(BadBoats, AreToldAndNothingIsPlanned) {
  const DemoCopy demo;
  auto text = text_of(kThreeBoats);
  const auto at = text.find(GetParam().from);
  ASSERT_NE(at, std::string::npos);
  const auto file = demo.folder() / "boats.json";
  write_text(file, text.replace(at, GetParam().from.size(), GetParam().to));
  const auto ran = demo.plan({"--boats", file.string()});
  EXPECT_EQ(ran.exit_code, 78) << ran.err;
  EXPECT_EQ(ran.out, "");
  EXPECT_THAT(ran.err, AllOf(HasSubstr("boats.json:"), HasSubstr(GetParam().told)));
}
INSTANTIATE_TEST_SUITE_P(
    Each, BadBoats,
    ::testing::Values(Mistake{"\"mill\"", "\"mil\"", "The nearest id is \"mill\""},
                      Mistake{"\"07:30\"", "\"05:00\"", "07:30 to before 19:00"},
                      Mistake{"\"Boat 2\"", "\"Boat 1\"", "a name of its own"},
                      Mistake{"2027-05-14", "2027-05-12", "as far ahead as a plan may be asked for"},
                      Mistake{"2027-05-14", "2027-02-30", "/date"},
                      Mistake{"\"guide\": \"Wren\"", "\"guyde\": \"Wren\"", "\"guide\""},
                      Mistake{"\"boats\": [", "\"boats\": [ 7,", "/boats/0"},
                      Mistake{"\"anglers\": 2", "\"anglers\": 2.5", "a whole number"},
                      Mistake{"\"schema_version\": 1,", "", "schema_version"}));

TEST(BadBoatsFile, OfAnotherDayThanAskedForIsToldAndNothingIsPlanned) {
  const auto ran = DemoCopy{}.plan({"--boats", kThreeBoats, "--date", "today"});
  EXPECT_EQ(ran.exit_code, 78);
  EXPECT_THAT(ran.err, AllOf(HasSubstr("/date"), HasSubstr("2027-05-13")));
}

TEST(BadBoatsFile, ThatIsNotThereOrHasNoBoatsIsTold) {
  const DemoCopy demo;
  EXPECT_EQ(demo.plan({"--boats", "/nowhere/boats.json"}).exit_code, 66);
  const auto file = demo.folder() / "boats.json";
  write_text(file, R"({ "schema_version": 1, "date": "2027-05-14", "boats": [] })");
  const auto ran = demo.plan({"--boats", file.string()});
  EXPECT_EQ(ran.exit_code, 78);
  EXPECT_THAT(ran.err, HasSubstr("no boat"));
}

TEST(BadBoatsFile, BesideASpotIsRefused) {
  EXPECT_EQ(DemoCopy{}.plan({"--boats", kThreeBoats, "--at", "bend"}).exit_code, 64);
}

}  // namespace
}  // namespace floatwright::testing
