// boats.json against the demo's configuration: what is read, every mistake with its place, and the published schema, judged
// by the package python3-jsonschema.
#include "adapters/in/files/boats_file.hpp"

#include <filesystem>
#include <fstream>

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::chrono::year_month_day kToday{std::chrono::year{2027} / 5 / 13};
constexpr DaysAllowed kAhead{kToday, std::chrono::year{2027} / 5 / 15};

const Configuration& demo() {
  static const Configuration configuration = [] {
    auto loaded = load_configuration(FLOATWRIGHT_SOURCE_DIR "/config/demo");
    EXPECT_TRUE(loaded.configuration);
    return std::move(*loaded.configuration);
  }();
  return configuration;
}

ReadAnswer<Boats> boats_with(const std::string& boats, const std::string& date = "2027-05-14") {
  return read_text("{ \"schema_version\": 1, \"date\": \"" + date + "\",\n\"boats\": [\n" + boats + "\n] }",
                   [](const LocatedJson& root, FileReading& reading) {
                     return read_boats(root, reading, demo().river, demo().settings);
                   });
}

LoadedBoats loaded(const std::string& text, const DaysAllowed& allowed = kAhead) {
  const auto* test = testing::UnitTest::GetInstance()->current_test_info();
  const std::filesystem::path file = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / (std::string{test->name()} + "_boats.json");
  std::ofstream(file, std::ios::binary) << text;
  return load_boats(file, demo(), allowed);
}

TEST(BoatsFile, ReadsTheDemoWithoutAProblem) {
  const auto read = load_boats(FLOATWRIGHT_SOURCE_DIR "/config/demo/boats.json", demo(), kAhead);
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_EQ(read.exit_code, 0);
  ASSERT_TRUE(read.boats);
  const auto& boats = read.boats->boats;
  ASSERT_EQ(boats.size(), 3u);
  EXPECT_EQ(boats[0].guide, "Wren");
  EXPECT_EQ(boats[0].from, "mill");
  EXPECT_EQ(in_hours(*boats[0].launch), 7.5);
  EXPECT_EQ(boats[0].anglers.size(), 2u);
  EXPECT_EQ(boats[1].anglers.at(1).name, "Ben");
  EXPECT_EQ(boats[1].methods.count(Method::Swing), 0u);
  EXPECT_FALSE(boats[2].from);
}

TEST(BoatsFile, NamesABoatByItsPlaceWhereItHasNoName) {
  const auto read = boats_with(R"({ "guide": "Wren" }, { "guide": "Teal" })");
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_EQ(read.value.boats.at(1).name, "Boat 2");
}

// The demo's guest casts 40 ft and does not wade.
TEST(BoatsFile, TakesANumberOfAnglersForPeopleLikeThoseOfTheSettings) {
  const auto boats = boats_with(R"({ "guide": "Wren", "anglers": 3 })").value.boats;
  ASSERT_EQ(boats.at(0).anglers.size(), 3u);
  EXPECT_NEAR(in_feet(boats[0].anglers[2].cast), 40.0, 1e-9);
  EXPECT_FALSE(boats[0].anglers[2].wades);
}

struct Mistake {
  std::string boats, pointer, found;
};
class BoatsFileMistake : public testing::TestWithParam<Mistake> {};
TEST_P(BoatsFileMistake, IsToldWithItsPlace) {
  const auto read = boats_with(GetParam().boats);
  EXPECT_THAT(read.problems, Contains(AllOf(testing::Field(&Problem::pointer, GetParam().pointer), Finds(GetParam().found),
                                            testing::Field(&Problem::warning, false))));
}
INSTANTIATE_TEST_SUITE_P(
    Each, BoatsFileMistake,
    testing::Values(Mistake{"", "/boats", "no boat"}, Mistake{R"({ "launch": "08:00" })", "/boats/0", "without \"guide\""},
                    Mistake{R"({ "guide": "Wren", "from": "mil" })", "/boats/0/from", "\"mil\""},
                    Mistake{R"({ "guide": "Wren", "from": "ferry", "to": "mill" })", "/boats/0/to", "not downstream of \"ferry\""},
                    Mistake{R"({ "guide": "Wren", "from": "quarry" })", "/boats/0/from", "no access downstream"},
                    Mistake{R"({ "guide": "Wren", "launch": "05:00" })", "/boats/0/launch", "\"05:00\""},
                    Mistake{R"({ "guide": "Wren", "launch": "19:00" })", "/boats/0/launch", "\"19:00\""},
                    Mistake{R"({ "guide": "Wren", "launch": "7.30" })", "/boats/0/launch", "\"7.30\""},
                    Mistake{R"({ "guide": "Wren", "anglers": 0 })", "/boats/0/anglers", "0"},
                    Mistake{R"({ "guide": "Wren", "anglers": "two" })", "/boats/0/anglers", "\"two\""},
                    Mistake{R"({ "guide": "Wren", "anglers": [] })", "/boats/0/anglers", "nobody"},
                    Mistake{R"({ "guide": "Wren", "methods": {} })", "/boats/0/methods", "no method"},
                    Mistake{R"({ "guide": "Wren", "rods_aboard": 0 })", "/boats/0/rods_aboard", "0"},
                    Mistake{R"({ "guide": "Wren", "lanch": "08:00" })", "/boats/0/lanch", "unknown key"},
                    Mistake{R"({ "guide": "Wren\u0007" })", "/boats/0/guide", "Wren"},
                    Mistake{R"({ "name": "Green", "guide": "Wren" }, { "name": "Green", "guide": "Teal" })", "/boats/1/name",
                            "/boats/0 is called too"},
                    Mistake{R"("Wren")", "/boats/0", "\"Wren\""}));

TEST(BoatsFile, NamesTheNearestKeyAndId) {
  EXPECT_THAT(boats_with(R"({ "guide": "Wren", "lanch": "08:00" })").problems, ElementsAre(Mends("launch")));
  EXPECT_THAT(boats_with(R"({ "guide": "Wren", "to": "fery" })").problems, ElementsAre(Mends("ferry")));
}

TEST(BoatsFile, TellsEveryProblemAtOnceWithItsLine) {
  const auto read = boats_with("{ \"guide\": \"Wren\", \"from\": \"mil\" },\n{ \"guide\": \"Teal\", \"launch\": \"04:00\" }");
  EXPECT_THAT(read.problems, ElementsAre(StandsAt(3, "/boats/0/from"), StandsAt(4, "/boats/1/launch")));
}

TEST(BoatsFile, WarnsOfAGuideInTwoBoats) {
  const auto read = boats_with(R"({ "name": "a", "guide": "Wren" }, { "name": "b", "guide": "Wren" })");
  ASSERT_EQ(read.problems.size(), 1u);
  EXPECT_TRUE(read.problems[0].warning);
}

TEST(BoatsFile, OfAnotherDayIsAProblem) {
  const std::string text = R"({ "schema_version": 1, "date": "2027-05-14", "boats": [ { "guide": "Wren" } ] })";
  EXPECT_EQ(loaded(text).exit_code, 0);
  const auto other = loaded(text, {kToday, kToday});
  EXPECT_EQ(other.exit_code, 78);
  EXPECT_THAT(other.problems, ElementsAre(AllOf(StandsAt(1, "/date"), Finds("2027-05-14"))));
  EXPECT_FALSE(other.boats);
  const auto past = loaded(R"({ "schema_version": 1, "date": "2027-05-12", "boats": [ { "guide": "Wren" } ] })");
  EXPECT_EQ(past.exit_code, 78);
}

TEST(BoatsFile, ThatIsNotThereOrNoJsonIsTold) {
  const auto gone = load_boats("/nowhere/boats.json", demo(), kAhead);
  EXPECT_EQ(gone.exit_code, 66);
  ASSERT_EQ(gone.problems.size(), 1u);
  EXPECT_EQ(loaded("{ \"schema_version\": 1, ").exit_code, 78);
  EXPECT_EQ(loaded("").exit_code, 78);
  EXPECT_EQ(loaded("[]").exit_code, 78);
  EXPECT_EQ(loaded(R"({ "schema_version": 1 })").exit_code, 78);
}

}  // namespace
}  // namespace floatwright
