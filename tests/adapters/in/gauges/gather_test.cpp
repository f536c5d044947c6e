#include "adapters/in/gauges/gather.hpp"

#include <gmock/gmock.h>

#include <algorithm>

#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"
#include "tests/adapters/in/gauges/temporary_folder.hpp"
#include "tests/adapters/in/http/loopback_server.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

namespace fs = std::filesystem;

const Instant kNow = std::chrono::sys_days{std::chrono::year{2026} / 5 / 13} + std::chrono::hours{13};
const std::string kArchived = "usgs-water-data_00000001.json";

// The items of a station are in the file of its name.
const std::string kItems =
    "location /collections/continuous/items { rewrite ^ /$arg_monitoring_location_id.json break; }";
const std::string kOneRow = features(feature("2026-05-13T12:00:00Z", "100"));

Configuration one_gauge(const std::string& station = "usgs:00000001") {
  Configuration out;
  GaugeSite gauge;
  gauge.id = "heron";
  gauge.station = station;
  out.river.gauges = {gauge};
  return out;
}

std::ptrdiff_t requests(const LoopbackServer& server) {
  const std::string log = server.log();
  return std::count(log.begin(), log.end(), '\n');
}

Gathered online(const Configuration& configuration, const LoopbackServer& server, Instant now = kNow) {
  return gather_readings(configuration, now, false, {.usgs_water_data = server.base()});
}

TEST(GatherReadings, TakesADirectoryOfPayloadsInPlaceOfTheNetwork) {
  const TemporaryFolder folder;
  folder.put("a.json", kOneRow);
  Configuration configuration = one_gauge();
  configuration.readings.payloads = folder.path();
  const auto gathered = gather_readings(configuration, kNow, false);
  EXPECT_THAT(gathered.troubles, IsEmpty());
  ASSERT_EQ(gathered.records.size(), 1u);
  EXPECT_NEAR(in_cubic_feet_per_second(gathered.records[0].discharge.values.at(0)), 100.0, 1e-9);
  EXPECT_EQ(gathered.records[0].newest.at(0).source, (folder.path() / "a.json").string());
}

TEST(GatherReadings, TellsALostGaugeAndAStationOfNoService) {
  const TemporaryFolder folder;
  Configuration configuration = one_gauge();
  configuration.readings.payloads = folder.path();
  configuration.river.gauges.push_back(configuration.river.gauges[0]);
  configuration.river.gauges[1].station = "moon:7";
  const auto gathered = gather_readings(configuration, kNow, true);
  EXPECT_EQ(gathered.records.size(), 2u);
  EXPECT_THAT(gathered.troubles, ElementsAre(HasSubstr("no service here has a station \"moon:7\""),
                                             HasSubstr("gauge heron (usgs:00000001): no reading up to now in")));
}

TEST(GatherReadings, AsksTheServiceAndKeepsTheAnswerInTheArchive) {
  const LoopbackServer server(kItems);
  const TemporaryFolder folder;
  server.put("USGS-00000001.json", kOneRow);
  Configuration configuration = one_gauge();
  configuration.readings.archive = folder.path() / "archive";
  configuration.readings.contact = "wren@example.org";
  const auto gathered = online(configuration, server);
  EXPECT_THAT(gathered.troubles, IsEmpty());
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
  EXPECT_EQ(folder.get("archive/" + kArchived), kOneRow);
  EXPECT_THAT(server.log(1), AllOf(HasSubstr("monitoring_location_id=USGS-00000001&"), HasSubstr("limit=50000"),
                                  HasSubstr("\"floatwright (wren@example.org)\" \"-\"")));
}

TEST(GatherReadings, AsksAgainOnlyAfterHalfAnHour) {
  const LoopbackServer server(kItems);
  const TemporaryFolder folder;
  server.put("USGS-00000001.json", kOneRow);
  folder.put(kArchived, kOneRow);
  Configuration configuration = one_gauge();
  configuration.readings.archive = folder.path();
  const auto written_before = [&](Period age) {
    fs::last_write_time(folder.path() / kArchived, std::chrono::file_clock::from_sys(kNow - age));
  };
  written_before(std::chrono::minutes{30});
  EXPECT_EQ(online(configuration, server).records.at(0).discharge.size(), 1u);
  EXPECT_EQ(requests(server), 0);
  written_before(std::chrono::minutes{31});
  EXPECT_EQ(online(configuration, server).records.at(0).discharge.size(), 1u);
  EXPECT_EQ(requests(server), 1);
}

TEST(GatherReadings, ReadsTheArchiveAloneWhenOffline) {
  const LoopbackServer server(kItems);
  const TemporaryFolder folder;
  folder.put(kArchived, kOneRow);
  Configuration configuration = one_gauge();
  configuration.readings.archive = folder.path();
  const auto gathered = gather_readings(configuration, kNow + std::chrono::hours{20}, true, {server.base()});
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
  EXPECT_EQ(requests(server), 0);
}

TEST(GatherReadings, WorksWithoutAnArchiveAndSaysSoWhenOffline) {
  const LoopbackServer server(kItems);
  server.put("USGS-00000001.json", kOneRow);
  EXPECT_EQ(online(one_gauge(), server).records.at(0).discharge.size(), 1u);
  EXPECT_THAT(gather_readings(one_gauge(), kNow, true).troubles,
              testing::Contains("offline, and there is no archive to read: name one in settings.json"));
}

TEST(GatherReadings, WalksThePagesToTheEnd) {
  const LoopbackServer server(kItems);
  const TemporaryFolder folder;
  server.put("USGS-00000001.json", features(feature("2026-05-13T12:00:00Z", "\"100\""),
                                            R"(,"numberReturned":1,"links":[{"rel":"next","href":"/two.json"}])"));
  server.put("two.json", features(feature("2026-05-13T12:15:00Z", "\"110\""), R"(,"numberReturned":1,"links":[])"));
  Configuration configuration = one_gauge();
  configuration.readings.archive = folder.path();
  const auto gathered = online(configuration, server);
  EXPECT_THAT(gathered.troubles, IsEmpty());
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 2u);
  EXPECT_EQ(requests(server), 2);
}

struct BrokenWalk {
  std::string first_page, trouble;
};

class GatherReadingsBroken : public testing::TestWithParam<BrokenWalk> {};

TEST_P(GatherReadingsBroken, KeepsTheOldAnswerAndTellsWhy) {
  const LoopbackServer server(
      kItems + " location /busy { return 503; } location /moved { return 302 https://blog.example.org/; }");
  const TemporaryFolder folder;
  server.put("USGS-00000001.json", GetParam().first_page);
  folder.put(kArchived, kOneRow);
  fs::last_write_time(folder.path() / kArchived, std::chrono::file_clock::from_sys(kNow - std::chrono::hours{1}));
  Configuration configuration = one_gauge();
  configuration.readings.archive = folder.path();
  const auto gathered = online(configuration, server);
  EXPECT_THAT(gathered.troubles, ElementsAre(HasSubstr(GetParam().trouble)));
  EXPECT_EQ(folder.get(kArchived), kOneRow);
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
}

std::string page_before(const std::string& next) {
  return features(feature("2026-05-13T12:15:00Z", "110"), R"(,"links":[{"rel":"next","href":")" + next + R"("}])");
}

INSTANTIATE_TEST_SUITE_P(
    Answers, GatherReadingsBroken,
    testing::Values(BrokenWalk{page_before("/busy"), "status 503; try again later (after 1 pages, which were not kept"},
                    BrokenWalk{page_before("/moved"), "refused to follow a redirect to another server"},
                    BrokenWalk{page_before("https://other.example.org/"), "the next page is on another server"},
                    BrokenWalk{page_before("/USGS-00000001.json"), "the pages have no end"},
                    BrokenWalk{kOneRow.substr(0, 60), "cut short"}, BrokenWalk{"<html></html>", "a web page"},
                    BrokenWalk{R"({"error":{"code":"OVER_RATE_LIMIT","message":"wait"}})", "OVER_RATE_LIMIT: wait"}));

TEST(GatherReadings, TellsTheRateLimitWithWhatToDo) {
  const LoopbackServer server(
      "location / { default_type application/json; return 429 "
      "'{\"error\":{\"code\":\"OVER_RATE_LIMIT\",\"message\":\"m\"}}'; }");
  EXPECT_THAT(online(one_gauge(), server).troubles,
              testing::Contains(AllOf(HasSubstr("status 429, {\"error\":{\"code\":\"OVER_RATE_LIMIT\""),
                                      HasSubstr("api_key_file"))));
}

TEST(GatherReadings, TellsAPageOfHtmlSentForJson) {
  const LoopbackServer server("location / { default_type text/html; return 200 '<html></html>'; }");
  EXPECT_THAT(online(one_gauge(), server).troubles, testing::Contains(HasSubstr("sent \"text/html\", not json")));
}

TEST(GatherReadings, SendsAKeyOnlyFromAFileThatOthersCannotRead) {
  const LoopbackServer server(kItems);
  server.put("USGS-00000001.json", kOneRow);
  const TemporaryFolder folder;
  folder.put("key", "abc\n");
  Configuration configuration = one_gauge();
  configuration.readings.api_key_file = folder.path() / "key";
  fs::permissions(folder.path() / "key", fs::perms::owner_read | fs::perms::group_read);
  EXPECT_THAT(online(configuration, server).troubles, ElementsAre(HasSubstr("chmod 600")));
  EXPECT_THAT(server.log(1), HasSubstr("\"-\" \"gzip\""));
  fs::permissions(folder.path() / "key", fs::perms::owner_read);
  EXPECT_THAT(online(configuration, server).troubles, IsEmpty());
  EXPECT_THAT(server.log(2), HasSubstr("\"abc\" \"gzip\""));
}

}  // namespace
}  // namespace floatwright
