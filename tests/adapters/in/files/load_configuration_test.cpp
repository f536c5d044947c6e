#include <gmock/gmock.h>
#include <stdlib.h>
#include <sys/stat.h>

#include <algorithm>
#include <fstream>
#include <iterator>

#include "adapters/in/files/configuration.hpp"
#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::EndsWith;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

const std::filesystem::path kDemo = FLOATWRIGHT_SOURCE_DIR "/config/demo";

std::string content_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

TEST(BacktestRecords, StandInConfigurationsWithoutProblems) {
  for (const char* name : {"new_river", "north_fork", "north_fork_years", "south_fork", "plumtree"}) {
    const auto loaded = load_configuration(std::filesystem::path{FLOATWRIGHT_SOURCE_DIR "/fixtures/backtest"} / name);
    EXPECT_THAT(loaded.problems, IsEmpty()) << name;
    ASSERT_TRUE(loaded.configuration) << name;
    EXPECT_EQ(loaded.configuration->readings.csv_gauges.size(), loaded.configuration->river.gauges.size()) << name;
  }
  EXPECT_TRUE(load_configuration(FLOATWRIGHT_SOURCE_DIR "/fixtures/backtest/geometry").configuration);
}

// A copy of the demo's configuration that a test may spoil.
class LoadConfiguration : public testing::Test {
 protected:
  LoadConfiguration() {
    std::string pattern = (std::filesystem::temp_directory_path() / "floatwright-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
    for (const char* name : {"river.json", "tackle.json", "settings.json", "heron_releases.csv"}) {
      std::filesystem::copy_file(kDemo / name, folder_ / name);
    }
    std::filesystem::create_directory(folder_ / "payloads");
    replace("settings.json", "../../fixtures/lantern/payloads", "payloads");
  }
  ~LoadConfiguration() override { std::filesystem::remove_all(folder_); }

  void write(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }
  // Gives the line at which the replaced text begins.
  int replace(const std::string& name, const std::string& from, const std::string& to) const {
    std::string text = content_of(folder_ / name);
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    write(name, text.replace(at, from.size(), to));
    return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
  }

  std::filesystem::path folder_;
};

Problems errors_in(const LoadedConfiguration& loaded) {
  Problems errors;
  std::copy_if(loaded.problems.begin(), loaded.problems.end(), std::back_inserter(errors),
               [](const Problem& p) { return !p.warning; });
  return errors;
}

TEST_F(LoadConfiguration, ReadsTheDemo) {
  const auto loaded = load_configuration(folder_);
  ASSERT_THAT(errors_in(loaded), IsEmpty());
  EXPECT_EQ(loaded.exit_code, 0);
  ASSERT_TRUE(loaded.configuration);
  EXPECT_THAT(loaded.configuration->river.dams.at(0).schedule, SizeIs(13));
  EXPECT_EQ(loaded.configuration->readings.payloads, folder_ / "payloads");
  EXPECT_THAT(loaded.configuration->tackle.lines, SizeIs(12));
}

TEST_F(LoadConfiguration, NamesTheDirectoryOrFileThatIsNotThere) {
  const auto nowhere = load_configuration(folder_ / "nowhere");
  EXPECT_EQ(nowhere.exit_code, 66);
  EXPECT_THAT(say(nowhere.problems.at(0)), HasSubstr((folder_ / "nowhere").string()));
  std::filesystem::remove(folder_ / "tackle.json");
  const auto loaded = load_configuration(folder_);
  EXPECT_EQ(loaded.exit_code, 66);
  EXPECT_FALSE(loaded.configuration);
  EXPECT_THAT(errors_in(loaded), ElementsAre(Finds("tackle.json: no such file")));
}

TEST_F(LoadConfiguration, TellsTheProblemsOfEveryFileAtOnce) {
  const int river = replace("river.json", "\"snow_fed\"", "\"snow_fad\"");
  const int place = replace("river.json", "\"gauge\": \"alder\"", "\"gauge\": \"elder\"");
  const int code = replace("tackle.json", "\"WF-6-F/S\"", "\"WF6\"");
  const int rod = replace("tackle.json", "\"on_rod\": \"thin\"", "\"on_rod\": \"thick\"");
  const int rods = replace("settings.json", "\"rods_aboard\": 3", "\"rods_aboard\": -3");
  const int row = replace("heron_releases.csv", "2027-05-07T21:00", "2027-05-06T21:00");
  const auto loaded = load_configuration(folder_);
  EXPECT_EQ(loaded.exit_code, 78);
  EXPECT_FALSE(loaded.configuration);
  EXPECT_THAT(errors_in(loaded), ElementsAre(StandsAt(row, ""), StandsAt(river, "/snow_fad"),
                                             StandsAt(place, "/tributaries/0/gauge"), StandsAt(rods, "/rods_aboard"),
                                             StandsAt(code, "/lines/0/code"), StandsAt(rod, "/lines/11/on_rod")));
}

TEST_F(LoadConfiguration, LeavesOutWhatTheEngineWouldSayOfAPlaceThatCouldNotBeRead) {
  const int line = replace("river.json", "\"mile\": 40.2", "\"mile\": \"forty\"");
  EXPECT_THAT(errors_in(load_configuration(folder_)), ElementsAre(StandsAt(line, "/accesses/1/mile")));
}

TEST_F(LoadConfiguration, RefusesASecretThatOthersMayRead) {
  write("key", "not a key");
  replace("settings.json", "\"contact\": \"wren@example.org\"",
          "\"contact\": \"wren@example.org\", \"api_key_file\": \"key\"");
  ASSERT_EQ(::chmod((folder_ / "key").c_str(), 0640), 0);
  const auto open = load_configuration(folder_);
  EXPECT_EQ(open.exit_code, 77);
  EXPECT_THAT(errors_in(open), ElementsAre(AllOf(Finds("others may read"), Mends("chmod 600"))));
  ASSERT_EQ(::chmod((folder_ / "key").c_str(), 0600), 0);
  const auto closed = load_configuration(folder_);
  EXPECT_EQ(closed.exit_code, 0);
  EXPECT_EQ(closed.configuration->readings.api_key_file, folder_ / "key");
}

TEST_F(LoadConfiguration, RefusesAReleasesFileOrPayloadsThatAreNotThere) {
  const int dam = replace("river.json", "\"releases\": \"heron_releases.csv\"", "\"releases\": \"none.csv\"");
  const int readings = replace("settings.json", "\"payloads\"", "\"no_payloads\"");
  const auto loaded = load_configuration(folder_);
  EXPECT_EQ(loaded.exit_code, 78);
  EXPECT_THAT(errors_in(loaded), ElementsAre(StandsAt(dam, "/dams/0/releases"), StandsAt(readings, "/readings")));
}

TEST_F(LoadConfiguration, FindsAGaugesOwnFileAndItsClockIsTheRiversWhereNoneIsTyped) {
  const int gauge = replace("river.json", "usgs:00000001", "csv:ford");
  EXPECT_THAT(errors_in(load_configuration(folder_)),
              ElementsAre(AllOf(StandsAt(gauge, "/gauges/0/station"), Finds("csv:ford"))));
  const int file = replace("settings.json", "\"contact\": \"wren",
                           "\"csv_gauges\": [ { \"station\": \"csv:ford\", \"file\": \"ford.csv\", \"time_column\": 1, "
                           "\"columns\": [ { \"column\": 2, \"quantity\": \"stage\", \"unit\": \"ft\" } ] } ], \"contact\": \"wren");
  EXPECT_THAT(errors_in(load_configuration(folder_)), ElementsAre(StandsAt(file, "/csv_gauges/0/file")));
  write("ford.csv", "2027-05-13 07:00,2.5\n");
  const auto loaded = load_configuration(folder_);
  ASSERT_TRUE(loaded.configuration);
  EXPECT_EQ(loaded.configuration->readings.csv_gauges.at(0).file, folder_ / "ford.csv");
  EXPECT_EQ(loaded.configuration->readings.csv_gauges.at(0).time_zone, "America/Denver");
}

TEST_F(LoadConfiguration, LooksForTheRatingBesideTheRiver) {
  const int line = replace("river.json", "\"station\": \"usgs:00000001\"", "\"rating\": \"heron.rdb\", \"station\": \"usgs:00000001\"");
  EXPECT_THAT(errors_in(load_configuration(folder_)), ElementsAre(StandsAt(line, "/gauges/0/rating")));
  write("heron.rdb", "#");
  const auto loaded = load_configuration(folder_);
  ASSERT_TRUE(loaded.configuration.has_value());
  EXPECT_EQ(loaded.configuration->river.gauges.at(0).rating_file, (folder_ / "heron.rdb").string());
}

TEST_F(LoadConfiguration, KnowsTheAccessesOfTheStretchAskedFor) {
  replace("settings.json", "\"least_mi\": 8", "\"from\": \"mil\", \"least_mi\": 8");
  EXPECT_THAT(errors_in(load_configuration(folder_)),
              ElementsAre(AllOf(Finds("\"mil\""), Field(&Problem::pointer, "/stretch/from"))));
}

TEST_F(LoadConfiguration, TakesAPersonsOwnJudgement) {
  write("judgement.json", "{ \"choice\": { \"tie\": 0.2 } }");
  EXPECT_EQ(load_configuration(folder_).configuration->judgement.choice.tie, 0.2);
  write("judgement.json", "{ \"choise\": { \"tie\": 0.2 } }");
  EXPECT_THAT(errors_in(load_configuration(folder_)), ElementsAre(Mends("\"choice\"")));
}

TEST_F(LoadConfiguration, NeverFallsOverABrokenFile) {
  for (const std::string& text :
       {std::string(), std::string("{"), std::string("null"), std::string(10000, '['), std::string(1, '\0'),
        std::string("{\"river\": \"\xff\xfe\"}"), std::string("<html>gone</html>"), std::string("{}"),
        std::string("{\"schema_version\": 1e999}"), std::string("\xEF\xBB\xBF")}) {
    for (const char* name : {"river.json", "tackle.json", "settings.json"}) {
      const std::string good = content_of(folder_ / name);
      write(name, text);
      const auto loaded = load_configuration(folder_);
      EXPECT_EQ(loaded.exit_code, 78) << name << text.substr(0, 20);
      EXPECT_THAT(loaded.problems, Contains(Field(&Problem::file, EndsWith(name))));
      write(name, good);
    }
  }
}

TEST(SayProblem, NamesFileLinePlaceFindingAndMend) {
  EXPECT_EQ(say({"river.json", 12, "/accesses/1/mile", "\"forty\"", "a number of miles", "Write a number."}),
            "river.json:12: /accesses/1/mile: found \"forty\"; allowed: a number of miles. Write a number.");
  EXPECT_EQ(say({"river.json", 0, "", "a gap", "", "", true}), "river.json: warning: found a gap.");
}

}  // namespace
}  // namespace floatwright
