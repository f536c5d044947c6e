#include "adapters/in/fetch/stations.hpp"

#include <gmock/gmock.h>

#include "adapters/in/fetch/api_key.hpp"
#include "adapters/in/files/station_name.hpp"
#include "adapters/in/gauges/payload.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using testing::UnorderedElementsAreArray;

std::string asked_for(const std::string& station, const std::vector<ServiceSettings>& listed = {}) {
  std::vector<std::string> troubles;
  ReadingsPlace place;
  place.services = listed;
  const ServicesAsked services(place, troubles);
  EXPECT_THAT(troubles, IsEmpty());
  const ServiceAsked* const asked = services.of(station);
  return asked == nullptr ? "none" : asked->service->name + " at " + asked->access.base;
}

TEST(StationsOf, AreTheGaugesTheirForecastsAndTheWeathersPlace) {
  River river;
  river.gauges.resize(3);
  river.gauges[0].station = "usgs:00000001";
  river.gauges[0].forecast = "nwps:LNTM8";
  river.gauges[1].station = "csv:lodge";
  river.gauges[2].station = "usgs:00000001";
  river.weather_at = GeoPoint{45.01, -111.2};
  EXPECT_THAT(stations_of(river), ElementsAre("csv:lodge", "nwps:LNTM8", "nws:45.0100,-111.2000", "usgs:00000001"));
}

TEST(ServicesAskedFor, AreTheFirstOfAPrefixUnlessSettingsListAnother) {
  EXPECT_EQ(asked_for("usgs:00000001"), "usgs-water-data at https://api.waterdata.usgs.gov/ogcapi/v1");
  EXPECT_EQ(asked_for("wsc:08MF005"), "wsc-realtime at https://wateroffice.ec.gc.ca");
  EXPECT_EQ(asked_for("usgs:00000001", {{"usgs-legacy", std::nullopt, std::nullopt}}),
            "usgs-legacy at https://waterservices.usgs.gov/nwis");
  EXPECT_EQ(asked_for("usgs:00000001", {{"usgs-water-data", "http://127.0.0.1:9", std::nullopt}}),
            "usgs-water-data at http://127.0.0.1:9");
  EXPECT_EQ(asked_for("csv:lodge"), "none");
}

// The files' room names the services where they are typed; they are known in the gauges' room.
TEST(ServicesAskedFor, AreThoseThatTheFilesMayName) {
  std::vector<std::string> names;
  for (const GaugeService& service : gauge_services()) {
    if (service.ask == nullptr) continue;
    names.push_back(service.name);
    EXPECT_THAT(station_prefixes(), testing::Contains(service.prefix));
  }
  EXPECT_THAT(service_names(), UnorderedElementsAreArray(names));
}

TEST(KeyVariable, IsTheServicesNameInCapitals) {
  EXPECT_EQ(key_variable("usgs-water-data"), "FLOATWRIGHT_KEY_USGS_WATER_DATA");
}

}  // namespace
}  // namespace floatwright
