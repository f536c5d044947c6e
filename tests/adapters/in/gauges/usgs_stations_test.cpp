// Recorded answers (fixtures/recorded/usgs-water-data), read off the files by hand; version 1 as the service's notice
// of 4 September 2026 says that it differs.
#include "adapters/in/gauges/usgs_water_data/stations.hpp"

#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::string recorded_collection(const std::string& name) { return recorded("usgs-water-data/v0_" + name + ".json"); }

std::vector<StationAbout> stations_in(const std::vector<std::string>& pages) {
  UsgsStations all;
  for (const std::string& page : pages) {
    const auto next = all.take(page, "a.json");
    EXPECT_TRUE(next.has_value()) << (next ? "" : next.error().what);
  }
  return all.stations();
}

TEST(UsgsStations, AreReadAsRecorded) {
  const auto stations = stations_in({recorded_collection("monitoring-locations")});
  ASSERT_EQ(stations.size(), 2u);
  const StationAbout& well = stations[0];
  EXPECT_EQ(well.station, "usgs:410252073314801");
  EXPECT_EQ(well.name, "CT-STM    2");
  EXPECT_EQ(well.site_type, "Well");
  EXPECT_EQ(well.state, "Connecticut");
  EXPECT_EQ(well.zone, "EST");
  EXPECT_EQ(well.daylight_saving, false);
  EXPECT_DOUBLE_EQ(well.longitude_deg.value(), -73.52955169969904);
  EXPECT_DOUBLE_EQ(well.latitude_deg.value(), 41.04777271320483);
  EXPECT_DOUBLE_EQ(in_feet(well.altitude.value()), 9.0);
  EXPECT_FALSE(well.drainage_area.has_value());
  EXPECT_THAT(well.series, IsEmpty());
}

TEST(UsgsStations, HaveTheirSeriesAsRecorded) {
  const auto stations = stations_in({recorded_collection("time-series-metadata")});
  ASSERT_EQ(stations.size(), 1u);
  EXPECT_EQ(stations[0].station, "usgs:05427718");
  ASSERT_EQ(stations[0].series.size(), 2u);
  const SeriesAbout& rain = stations[0].series[0];
  EXPECT_EQ(rain.series_id, "04585e9fb4ec467aafa86c7c0b3f1439");
  EXPECT_EQ(rain.parameter, "00045");
  EXPECT_FALSE(rain.variable.has_value());
  EXPECT_EQ(rain.unit, "in");
  EXPECT_TRUE(rain.primary);
  EXPECT_FALSE(rain.daily);
  EXPECT_EQ(rain.begin, instant_in("2013-10-01T11:00:00Z"));
  EXPECT_EQ(rain.end, instant_in("2025-10-01T10:45:00Z"));
  EXPECT_EQ(rain.longest_gap, std::chrono::minutes{72});
  EXPECT_TRUE(stations[0].series[1].daily);
  EXPECT_EQ(stations[0].series[1].statistic, "00003");
  EXPECT_FALSE(stations[0].series[1].longest_gap.has_value());
}

TEST(UsgsStations, AreJoinedOverCollectionsAndKeepWhatAnotherLeavesOut) {
  const auto stations =
      stations_in({recorded_collection("combined-metadata"), recorded_collection("time-series-metadata")});
  ASSERT_EQ(stations.size(), 1u);
  EXPECT_EQ(stations[0].name, "YAHARA RIVER AT WINDSOR, WI");
  EXPECT_DOUBLE_EQ(in_square_miles(stations[0].drainage_area.value()), 73.6);
  EXPECT_EQ(stations[0].daylight_saving, true);
  EXPECT_EQ(stations[0].series.size(), 2u);  // field measurements are none, and the rain is in both
}

TEST(UsgsStations, OfVersion1HaveBeginAndEndInUtcAndPerhapsNoPrimaryFlag) {
  const std::string one =
      R"({"type":"Feature","id":"abc","properties":{"monitoring_location_id":"USGS-00000001","parameter_code":"00060",)"
      R"("statistic_id":"00011","computation_identifier":"Instantaneous","computation_period_identifier":"Points",)"
      R"("sublocation_identifier":"PIER","web_description":"lower","primary":null,"unit_of_measure":"ft^3/s",)"
      R"("begin":"2007-10-01T06:00:00+00:00","end":"2026-05-13T12:00:00+00:00"}})";
  const auto stations = stations_in({features(one)});
  ASSERT_EQ(stations.size(), 1u);
  const SeriesAbout& flow = stations[0].series.at(0);
  EXPECT_EQ(flow.variable, Variable::Flow);
  EXPECT_EQ(flow.sensor, "PIER, lower");
  EXPECT_FALSE(flow.primary);
  EXPECT_FALSE(flow.daily);
  EXPECT_EQ(flow.begin, instant_in("2007-10-01T06:00:00Z"));
}

TEST(UsgsStations, GoOnAtTheNextPageAndRefuseOtherCollections) {
  UsgsStations all;
  EXPECT_EQ(all.take(features("", R"(,"links":[{"rel":"next","href":"/b"}])"), "a").value(), "/b");
  for (const std::string name : {"field-measurements", "field-measurements-metadata", "channel-measurements", "daily"})
    EXPECT_THAT(all.take(recorded_collection(name), "a").error().what, HasSubstr("neither stations nor series"))
        << name;
  EXPECT_THAT(all.take(recorded("usgs-water-data/error_429_OVER_RATE_LIMIT.json"), "a").error().what,
              HasSubstr("OVER_RATE_LIMIT"));
  EXPECT_THAT(all.stations(), IsEmpty());
}

TEST(UsgsStations, AreToldFromReadings) {
  EXPECT_TRUE(is_usgs_stations(recorded_collection("monitoring-locations")));
  EXPECT_TRUE(is_usgs_stations(recorded_collection("time-series-metadata")));
  EXPECT_FALSE(is_usgs_stations(recorded_collection("continuous")));
}

}  // namespace
}  // namespace floatwright
