#include "adapters/in/fetch/first_look.hpp"

#include <gmock/gmock.h>

#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"
#include "tests/adapters/in/http/loopback_server.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

const Instant kNow = std::chrono::sys_days{std::chrono::year{2026} / 5 / 13} + std::chrono::hours{13};
const std::string kCollections =
    "location /collections/monitoring-locations/items { rewrite ^ /stations.json break; }"
    "location /collections/time-series-metadata/items { rewrite ^ /series.json break; }"
    "location /collections/continuous/items { rewrite ^ /readings.json break; }";
const std::string kStation =
    R"({"type":"Feature","id":"USGS-00000001","properties":{"monitoring_location_name":"LANTERN RIVER AT MILL, MT",)"
    R"("drainage_area":980.0,"time_zone_abbreviation":"MST","uses_daylight_savings":"Y"}})";
const std::string kSeries =
    R"({"type":"Feature","id":"abc","properties":{"monitoring_location_id":"USGS-00000001","parameter_code":"00060",)"
    R"("statistic_id":"00011","computation_identifier":"Instantaneous","unit_of_measure":"ft^3/s"}})";

struct Bench {
  explicit Bench(const std::string& more = "") : server(kCollections + more) {
    place.services = {{"usgs-water-data", server.base(), std::nullopt}};
    order.now = order.clock = kNow;
    order.manners.most_tries = 1;
    server.put("stations.json", features(kStation));
    server.put("series.json", features(kSeries));
    server.put("readings.json", features(feature("2026-05-13T12:00:00Z", "\"100\"")));
  }
  [[nodiscard]] Result<FirstLook> look(const std::string& station = "usgs:00000001") const {
    std::vector<std::string> troubles;
    return first_look(station, ServicesAsked(place, troubles), order);
  }

  LoopbackServer server;
  ReadingsPlace place;
  FetchOrder order;
};

TEST(FirstLook, AsksForTheStationItsSeriesAndTheLastDays) {
  const Bench bench;
  const auto look = bench.look();
  ASSERT_TRUE(look.has_value()) << look.error().what;
  EXPECT_TRUE(look->described);
  EXPECT_EQ(look->about.name, "LANTERN RIVER AT MILL, MT");
  EXPECT_DOUBLE_EQ(in_square_miles(look->about.drainage_area.value()), 980.0);
  EXPECT_EQ(look->about.series.size(), 1u);
  ASSERT_EQ(look->series.size(), 1u);
  EXPECT_THAT(look->troubles, IsEmpty());
  EXPECT_THAT(bench.server.log(3), AllOf(HasSubstr("monitoring-locations/items?id=USGS-00000001&"),
                                         HasSubstr("time-series-metadata/items?monitoring_location_id=USGS-00000001&"),
                                         HasSubstr("time=2026-05-10T13:00:00Z/2026-05-13T13:00:00Z")));
}

TEST(FirstLook, FollowsThePagesAndNoLinkToAnotherServer) {
  const Bench bench;
  bench.server.put("series.json", features("", R"(,"links":[{"rel":"next","href":"/two.json"}])"));
  bench.server.put("two.json", features(kSeries));
  EXPECT_EQ(bench.look()->about.series.size(), 1u);
  bench.server.put("two.json", features(kSeries, R"(,"links":[{"rel":"next","href":"/two.json"}])"));
  EXPECT_THAT(bench.look().error().what, HasSubstr("one came twice"));
  bench.server.put("two.json", features(kSeries, R"(,"links":[{"rel":"next","href":"https://other.example.org/"}])"));
  EXPECT_THAT(bench.look().error().what, HasSubstr("another server"));
}

TEST(FirstLook, IsNothingWhereTheServiceKnowsNoSuchStationOrFails) {
  const Bench bench;
  for (const std::string& answer : {features(""), std::string{"<html></html>"}, kStation.substr(0, 40)}) {
    bench.server.put("stations.json", answer);
    const auto look = bench.look();
    ASSERT_FALSE(look.has_value());
    EXPECT_EQ(look.error().exit_code, kExitNothingMade) << look.error().what;
  }
  bench.server.put("stations.json", features(""));
  bench.server.put("series.json", features(""));
  EXPECT_THAT(bench.look().error().what, HasSubstr("knows no such station"));
}

TEST(FirstLook, GoesOnWithoutReadingsAndSaysSo) {
  const Bench bench;
  bench.server.put("readings.json", "{");
  const auto look = bench.look();
  ASSERT_TRUE(look.has_value()) << look.error().what;
  EXPECT_THAT(look->series, IsEmpty());
  EXPECT_THAT(look->troubles, testing::ElementsAre(HasSubstr("usgs:00000001")));
}

TEST(FirstLook, LeavesAServiceThatIsOnlyReadFromFilesUnasked) {
  const auto look = Bench().look("csv:lodge");
  ASSERT_TRUE(look.has_value()) << look.error().what;
  EXPECT_FALSE(look->described);
  EXPECT_EQ(look->about.station, "csv:lodge");
  EXPECT_THAT(look->troubles, testing::ElementsAre(HasSubstr("csv:lodge")));
}

}  // namespace
}  // namespace floatwright
