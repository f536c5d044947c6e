#include "adapters/in/fetch/gather.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <cstdlib>

#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"
#include "tests/adapters/in/gauges/temporary_folder.hpp"
#include "tests/adapters/in/http/loopback_server.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

namespace fs = std::filesystem;

const Instant kNow = std::chrono::sys_days{std::chrono::year{2026} / 5 / 13} + std::chrono::hours{13};

// The items of a station are in the file of its name.
const std::string kItems =
    "location /collections/continuous/items { rewrite ^ /$arg_monitoring_location_id.json break; }";
const std::string kOneRow = features(feature("2026-05-13T12:00:00Z", "\"100\""));

// A river of one gauge, a server in place of the service, an archive.
struct Bench {
  explicit Bench(const std::string& locations = kItems) : server(locations) {
    GaugeSite gauge;
    gauge.id = "heron";
    gauge.station = "usgs:00000001";
    configuration.river.gauges = {gauge};
    configuration.readings.services = {{"usgs-water-data", server.base(), std::nullopt}};
    order.fetch.now = order.fetch.clock = kNow;
    order.fetch.fresh_enough = kAskAgainAfter;
    order.fetch.manners.most_tries = 1;
    order.archive = folder.path() / "archive" / "readings.sqlite3";
    server.put("USGS-00000001.json", kOneRow);
  }

  Gathered gather(Period later = Period{0}) {
    order.fetch.now = order.fetch.clock = kNow + later;
    return gather_readings(configuration, order);
  }
  // Waits until at least so many have been written down.
  [[nodiscard]] std::ptrdiff_t requests(std::ptrdiff_t at_least = 0) const {
    const std::string log = server.log(static_cast<int>(at_least));
    return std::count(log.begin(), log.end(), '\n');
  }

  LoopbackServer server;
  TemporaryFolder folder;
  Configuration configuration;
  GatherOrder order;
};

TEST(GatherReadings, TakesADirectoryOfPayloadsInPlaceOfTheNetwork) {
  Bench bench;
  bench.folder.put("a.json", kOneRow);
  bench.configuration.readings.payloads = bench.folder.path();
  const auto gathered = bench.gather();
  EXPECT_THAT(gathered.troubles, IsEmpty());
  ASSERT_EQ(gathered.records.size(), 1u);
  EXPECT_NEAR(in_cubic_feet_per_second(gathered.records[0].discharge.values.at(0)), 100.0, 1e-9);
  EXPECT_EQ(gathered.records[0].newest.at(0).source, (bench.folder.path() / "a.json").string());
  EXPECT_EQ(bench.requests(), 0);
}

// Form: the grid forecast of api.weather.gov; its numbers are invented.
TEST(GatherReadings, TakesARecordedForecastForTheRiversOwnPointOfWeather) {
  Bench bench;
  bench.folder.put("a.json", kOneRow);
  bench.folder.put("weather.json", R"({"id":"https://api.weather.gov/gridpoints/XXX/1,1","properties":{"@type":"wx:Gridpoint",
    "updateTime":"2026-05-13T12:00:00+00:00","gridId":"XXX","gridX":"1","gridY":"1",
    "windSpeed":{"uom":"wmoUnit:km_h-1","values":[{"validTime":"2026-05-13T12:00:00+00:00/PT6H","value":36}]}}})");
  bench.configuration.readings.payloads = bench.folder.path();
  EXPECT_FALSE(bench.gather().weather) << "the river names no point";
  bench.configuration.river.weather_at = GeoPoint{45.2, -111.2};
  const auto gathered = bench.gather();
  ASSERT_TRUE(gathered.weather);
  ASSERT_FALSE(gathered.weather->wind.empty());
  EXPECT_NEAR(in_metres_per_second(gathered.weather->wind.values.front()), 10.0, 1e-9);
}

TEST(GatherReadings, TellsALostGaugeAndAStationOfNoService) {
  Bench bench;
  bench.order.offline = true;
  bench.configuration.river.gauges.push_back(bench.configuration.river.gauges[0]);
  bench.configuration.river.gauges[1].station = "moon:7";
  const auto gathered = bench.gather();
  EXPECT_EQ(gathered.records.size(), 2u);
  EXPECT_THAT(gathered.troubles, AllOf(Contains(HasSubstr("no service here has a station \"moon:7\"")),
                                       Contains(HasSubstr("gauge heron (usgs:00000001): no reading up to now in"))));
}

TEST(GatherReadings, AsksTheServiceAndKeepsTheAnswerInTheArchive) {
  Bench bench;
  bench.order.fetch.manners.user_agent = "floatwright (wren@example.org)";
  EXPECT_THAT(bench.gather().troubles, IsEmpty());
  EXPECT_THAT(bench.server.log(1), AllOf(HasSubstr("monitoring_location_id=USGS-00000001&"), HasSubstr("limit=50000"),
                                         HasSubstr("time=2026-03-14T13:00:00Z/2026-05-13T13:00:00Z"),
                                         HasSubstr("\"floatwright (wren@example.org)\" \"-\"")));
  bench.order.offline = true;
  const auto later = bench.gather(std::chrono::hours{20});
  EXPECT_THAT(later.troubles, IsEmpty());
  EXPECT_EQ(later.records.at(0).discharge.size(), 1u);
  EXPECT_TRUE(later.records.at(0).newest.at(0).marks.contains(Mark::Stale));
  EXPECT_EQ(bench.requests(1), 1);
}

TEST(GatherReadings, AsksAgainOnlyAfterHalfAnHourAndOnlyForTheLastHours) {
  Bench bench;
  EXPECT_EQ(bench.gather().records.at(0).discharge.size(), 1u);
  EXPECT_EQ(bench.gather(std::chrono::minutes{29}).records.at(0).discharge.size(), 1u);
  EXPECT_EQ(bench.requests(1), 1);
  EXPECT_EQ(bench.gather(std::chrono::minutes{31}).records.at(0).discharge.size(), 1u);
  EXPECT_THAT(bench.server.log(2), HasSubstr("time=2026-05-13T07:00:00Z/2026-05-13T13:31:00Z"));
}

TEST(GatherReadings, GoOnWithTheArchiveWhenTheNetworkIsGone) {
  Bench bench;
  EXPECT_EQ(bench.gather().records.at(0).discharge.size(), 1u);
  bench.configuration.readings.services[0].address = "http://127.0.0.1:9";
  const auto gathered = bench.gather(std::chrono::hours{8});
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
  EXPECT_TRUE(gathered.records.at(0).newest.at(0).marks.contains(Mark::Stale));
  EXPECT_THAT(gathered.troubles, ElementsAre(AllOf(HasSubstr("station usgs:00000001: http://127.0.0.1:9"))));
}

TEST(GatherReadings, DoNotTrustABookWrittenByAClockThatWasAhead) {
  Bench bench;
  EXPECT_THAT(bench.gather(std::chrono::hours{1}).troubles, IsEmpty());
  EXPECT_THAT(bench.gather().troubles, IsEmpty());
  EXPECT_EQ(bench.requests(2), 2);
}

TEST(GatherReadings, AsksForStationsTogether) {
  Bench bench;
  bench.configuration.river.gauges.push_back(bench.configuration.river.gauges[0]);
  bench.configuration.river.gauges[1].station = "usgs:00000002";
  bench.server.put("USGS-00000001,USGS-00000002.json", kOneRow);
  const auto gathered = bench.gather();
  EXPECT_THAT(bench.server.log(1), HasSubstr("monitoring_location_id=USGS-00000001,USGS-00000002&"));
  EXPECT_EQ(bench.requests(1), 1);
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
  EXPECT_THAT(gathered.troubles, ElementsAre(HasSubstr("usgs:00000002): no reading up to now")));
}

TEST(GatherReadings, StillHasFreshReadingsWhereNothingCanBeKept) {
  Bench bench;
  bench.folder.put("archive", "a file where the directory should be");
  const auto gathered = bench.gather();
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
  EXPECT_THAT(gathered.troubles, Contains(HasSubstr("what is fetched is not kept")));
}

TEST(GatherReadings, SaysSoWhenOfflineWithoutAnArchive) {
  Bench bench;
  bench.order.offline = true;
  EXPECT_THAT(bench.gather().troubles, Contains(AllOf(HasSubstr("readings.sqlite3"), HasSubstr("fetch"))));
  bench.order.archive.reset();
  EXPECT_THAT(bench.gather().troubles, Contains(HasSubstr("no place for an archive: name one in settings.json")));
}

TEST(GatherReadings, WalksThePagesToTheEnd) {
  Bench bench;
  bench.server.put("USGS-00000001.json", features(feature("2026-05-13T12:00:00Z", "\"100\""),
                                                  R"(,"numberReturned":1,"links":[{"rel":"next","href":"/two.json"}])"));
  bench.server.put("two.json", features(feature("2026-05-13T12:15:00Z", "\"110\""), R"(,"numberReturned":1,"links":[])"));
  const auto gathered = bench.gather();
  EXPECT_THAT(gathered.troubles, IsEmpty());
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 2u);
  EXPECT_EQ(bench.requests(2), 2);
}

struct BrokenWalk {
  std::string first_page, trouble;
};

class GatherReadingsBroken : public testing::TestWithParam<BrokenWalk> {};

TEST_P(GatherReadingsBroken, KeepsTheOldReadingsAndTellsWhy) {
  Bench bench(kItems + " location /busy { return 503; } location /moved { return 302 https://blog.example.org/; }");
  EXPECT_EQ(bench.gather().records.at(0).discharge.size(), 1u);
  bench.server.put("USGS-00000001.json", GetParam().first_page);
  const auto gathered = bench.gather(std::chrono::hours{1});
  EXPECT_THAT(gathered.troubles, ElementsAre(HasSubstr(GetParam().trouble)));
  EXPECT_EQ(gathered.records.at(0).discharge.size(), 1u);
}

std::string page_before(const std::string& next) {
  return features(feature("2026-05-13T12:15:00Z", "\"110\""), R"(,"links":[{"rel":"next","href":")" + next + R"("}])");
}

INSTANTIATE_TEST_SUITE_P(
    Answers, GatherReadingsBroken,
    testing::Values(BrokenWalk{page_before("/busy"), "try again later (after 1 pages, which were not kept"},
                    BrokenWalk{page_before("/moved"), "another"},
                    BrokenWalk{page_before("https://other.example.org/"), "the next page is on another server"},
                    BrokenWalk{page_before("/USGS-00000001.json"), "the pages have no end"},
                    BrokenWalk{kOneRow.substr(0, 60), "cut short"}, BrokenWalk{"<html></html>", "a web page"},
                    BrokenWalk{R"({"error":{"code":"OVER_RATE_LIMIT","message":"wait"}})", "OVER_RATE_LIMIT: wait"}));

TEST(GatherReadings, SendsAKeyOnlyFromAFileThatOthersCannotRead) {
  Bench bench;
  bench.folder.put("key", "abc\n");
  const fs::path key = bench.folder.path() / "key";
  bench.configuration.readings.api_key_file = key;
  fs::permissions(key, fs::perms::owner_read | fs::perms::group_read);
  EXPECT_THAT(bench.gather().troubles, ElementsAre(HasSubstr("chmod 600")));
  EXPECT_THAT(bench.server.log(1), Not(HasSubstr("abc")));
  fs::permissions(key, fs::perms::owner_read);
  EXPECT_THAT(bench.gather(std::chrono::hours{1}).troubles, IsEmpty());
  EXPECT_THAT(bench.server.log(2), HasSubstr("\"abc\""));
}

TEST(GatherReadings, TakesAKeyFromTheEnvironment) {
  ASSERT_EQ(setenv("FLOATWRIGHT_KEY_USGS_WATER_DATA", "from-outside", 1), 0);
  Bench bench;
  EXPECT_THAT(bench.gather().troubles, IsEmpty());
  unsetenv("FLOATWRIGHT_KEY_USGS_WATER_DATA");
  EXPECT_THAT(bench.server.log(1), HasSubstr("\"from-outside\""));
}

// The older service takes a hundred stations a request; the last one's own request comes back with nothing.
TEST(Fetch, NotesAStationOnlyWhenAllThatWasAskedOfItHasCome) {
  Bench bench("location /iv/ { if ($arg_sites = 00000101) { return 404; } rewrite ^ /legacy.json break; }");
  bench.server.put("legacy.json", legacy(block(row("2026-05-13T12:00:00.000-05:00", "\"100\""))));
  bench.configuration.readings.services = {{"usgs-legacy", bench.server.base(), std::nullopt}};
  auto archive = Archive::open_to_write(*bench.order.archive, kNow);
  ASSERT_TRUE(archive);
  std::vector<std::string> troubles, stations;
  for (int i = 1; i <= 101; ++i) stations.push_back("usgs:" + std::to_string(100000000 + i).substr(1));
  const ServicesAsked services(bench.configuration.readings, troubles);
  const Fetched fetched = fetch(stations, services, &*archive, bench.order.fetch);
  EXPECT_THAT(fetched.lost, ElementsAre("usgs:00000101"));
  EXPECT_EQ(archive->asked("usgs:00000001")->size(), 1u);
  EXPECT_THAT(*archive->asked("usgs:00000101"), IsEmpty());
}

// Years come newest first, in pieces; what has been asked is not asked again.
TEST(Fetch, FillsInThePastAndGoesOnWhereItWasCut) {
  Bench bench;
  bench.order.fetch.since = std::chrono::days{365};
  bench.order.fetch.fresh_enough = Period{0};
  auto archive = Archive::open_to_write(*bench.order.archive, kNow);
  ASSERT_TRUE(archive);
  std::vector<std::string> troubles;
  const ServicesAsked services(bench.configuration.readings, troubles);
  const std::vector<std::string> stations{"usgs:00000001"};
  std::size_t told = 0;
  bench.order.fetch.progress = [&](std::size_t done, std::size_t of) { told = of - done; };
  EXPECT_THAT(fetch(stations, services, &*archive, bench.order.fetch).troubles, IsEmpty());
  EXPECT_EQ(told, 0u);
  const auto all = bench.requests(5);
  EXPECT_EQ(all, 5);
  bench.order.fetch.now = bench.order.fetch.clock = kNow + std::chrono::hours{1};
  EXPECT_THAT(fetch(stations, services, &*archive, bench.order.fetch).troubles, IsEmpty());
  EXPECT_EQ(bench.requests(all + 1), all + 1);  // the last hours only
  bench.order.fetch.since = std::chrono::days{400};
  EXPECT_THAT(fetch(stations, services, &*archive, bench.order.fetch).troubles, IsEmpty());
  EXPECT_LE(bench.requests(), all + 3);
}

}  // namespace
}  // namespace floatwright
