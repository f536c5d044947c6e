// What is asked of the USGS services. Names of collections and parameters, and which of them take several values with
// commas: the service's OpenAPI description 0.56.0. The filter: CQL2 in JSON, as public clients of the service send it.
#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/usgs_legacy/ask.hpp"
#include "adapters/in/gauges/usgs_water_data/ask.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

const ServiceAccess kAccess{"https://api.example/ogcapi/v1", "k3y"};

Wanted wanted(std::vector<std::string> stations, const char* from = "2026-05-01T00:00:00Z",
              const char* to = "2026-05-16T12:00:00Z") {
  return {std::move(stations), *instant_in(from), *instant_in(to)};
}

TEST(AskingUsgsWaterData, IsOneShortAddressForAFewStations) {
  const auto requests = ask_usgs_continuous(wanted({"01541000", "MN040-05427718"}), kAccess);
  ASSERT_EQ(requests.size(), 1u);
  EXPECT_EQ(requests[0].url,
            "https://api.example/ogcapi/v1/collections/continuous/items?monitoring_location_id=USGS-01541000,"
            "MN040-05427718&parameter_code=00060,00065,00010,63680,00076&limit=50000&f=json&skipGeometry=true"
            "&time=2026-05-01T00:00:00Z/2026-05-16T12:00:00Z");
  EXPECT_EQ(requests[0].secret_header, "X-Api-Key: k3y");
  EXPECT_THAT(requests[0].url, Not(HasSubstr("k3y")));
  EXPECT_THAT(requests[0].content_types, ElementsAre("json"));
  EXPECT_THAT(requests[0].body, IsEmpty());
  EXPECT_EQ(requests[0].tag, kManyStations);
  EXPECT_EQ(ask_usgs_continuous(wanted({"01541000"}), kAccess).at(0).tag, 0u);
}

TEST(AskingUsgsWaterData, IsAFilterForManyStations) {
  std::vector<std::string> stations;
  for (int i = 0; i < 500; ++i) stations.push_back(std::to_string(10000000 + i));
  const auto requests = ask_usgs_continuous(wanted(stations), {kAccess.base, ""});
  ASSERT_EQ(requests.size(), 1u);
  EXPECT_LT(requests[0].url.size(), 300u);
  EXPECT_THAT(requests[0].url, HasSubstr("&time=2026-05-01T00:00:00Z/"));
  EXPECT_EQ(requests[0].body_type, "application/query-cql-json");
  EXPECT_THAT(requests[0].secret_header, IsEmpty());
  EXPECT_THAT(requests[0].body,
              StartsWith(R"({"op":"and","args":[{"op":"in","args":[{"property":"monitoring_location_id"},)"
                         R"(["USGS-10000000","USGS-10000001",)"));
  EXPECT_THAT(requests[0].body, EndsWith(R"("USGS-10000499"]]},{"op":"in","args":[{"property":"parameter_code"},)"
                                         R"(["00060","00065","00010","63680","00076"]]}]})"));
}

TEST(AskingUsgsWaterData, IsSplitAfterThreeYears) {
  const auto requests =
      ask_usgs_continuous(wanted({"01541000"}, "2020-01-01T00:00:00Z", "2026-01-01T00:00:00Z"), kAccess);
  ASSERT_EQ(requests.size(), 3u);
  EXPECT_THAT(requests[0].url, HasSubstr("time=2020-01-01T00:00:00Z/2022-12-31T00:00:00Z"));
  EXPECT_THAT(requests[1].url, HasSubstr("time=2022-12-31T00:00:00Z/2025-12-30T00:00:00Z"));
  EXPECT_THAT(requests[2].url, HasSubstr("time=2025-12-30T00:00:00Z/2026-01-01T00:00:00Z"));
}

TEST(AskingUsgsWaterData, KnowsTheOtherCollections) {
  EXPECT_THAT(ask_usgs_daily(wanted({"01541000"}), kAccess).at(0).url,
              HasSubstr("/daily/items?monitoring_location_id=USGS-01541000&parameter_code=00060,00065,00010,63680,00076"
                        "&limit=50000&f=json&statistic_id=00003&skipGeometry=true&time=2026-05-01/2026-05-16"));
  EXPECT_THAT(ask_usgs_stations({"01541000"}, kAccess).at(0).url,
              HasSubstr("/monitoring-locations/items?id=USGS-01541000&limit=50000&f=json"));
  EXPECT_THAT(ask_usgs_series({"01541000"}, kAccess).at(0).url,
              HasSubstr("/time-series-metadata/items?monitoring_location_id=USGS-01541000&"));
  const auto visits = ask_usgs_visits({"01541000"}, kAccess);
  ASSERT_EQ(visits.size(), 2u);
  EXPECT_THAT(visits[0].url, HasSubstr("/field-measurements/items?"));
  EXPECT_THAT(visits[1].url, HasSubstr("/channel-measurements/items?"));
}

TEST(AskingTheOlderUsgsService, TakesAHundredStationsAtOnce) {
  std::vector<std::string> stations(101, "01541000");
  stations.back() = "MN040-05427718";
  const auto requests = ask_usgs_legacy(wanted(stations), {"https://old.example/nwis", ""});
  ASSERT_EQ(requests.size(), 2u);
  EXPECT_THAT(requests[0].url, HasSubstr("https://old.example/nwis/iv/?format=json&sites=01541000,01541000,"));
  EXPECT_EQ(requests[0].tag, kManyStations);
  EXPECT_THAT(requests[1].url, HasSubstr("sites=MN040:05427718&parameterCd=00060,00065,00010,63680,00076"
                                         "&startDT=2026-05-01T00:00:00Z&endDT=2026-05-16T12:00:00Z"));
  EXPECT_EQ(requests[1].tag, 100u);
}

}  // namespace
}  // namespace floatwright
