#include "adapters/out/start/first_files.hpp"

#include <gmock/gmock.h>

#include "adapters/in/files/configuration.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/temporary_folder.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::HasSubstr;

FirstValues metric_values() {
  FirstValues values;
  values.about.station = "nve:1.2.3";
  values.about.drainage_area = square_kilometres(154.25);
  values.time_zone = "Europe/Oslo";
  values.units = UnitSystem::Metric;
  NewestReading flow;
  flow.si = 12.3456;
  flow.time =
      std::chrono::sys_days{std::chrono::year{2026} / 7 / 1} + std::chrono::hours{22} + std::chrono::minutes{30};
  values.flow = flow;
  return values;
}

// As a configuration: what is wrong with it.
Problems problems_of(const FirstValues& values) {
  TemporaryFolder folder;
  folder.put("river.json", first_river(values));
  folder.put("tackle.json", first_tackle());
  folder.put("settings.json", first_settings(values));
  return load_configuration(folder.path()).problems;
}

TEST(FirstFiles, ReadButForTheirBlanks) {
  FirstValues bare, csv;
  bare.about.station = "usgs:1";
  csv.about.station = "csv:staff";
  for (const FirstValues& values : {metric_values(), bare, csv})
    for (const Problem& problem : problems_of(values))
      EXPECT_THAT(problem.found, HasSubstr("nothing yet (null)"))
          << problem.file << ":" << problem.line << " " << problem.pointer;
}

TEST(FirstFiles, AreInTheUnitsOfTheService) {
  EXPECT_THAT(
      first_river(metric_values()),
      AllOf(HasSubstr("\"km\": null"), HasSubstr("\"drainage_area_km2\": 154.25"), HasSubstr("\"at_flow_m3_s\": 12.3,"),
            HasSubstr("It read 12.3 m3/s on 2026-07-02 at 00:30.")));  // UTC+2 in a Norwegian summer
  EXPECT_THAT(first_settings(metric_values()), HasSubstr("\"units\": \"metric\""));
}

TEST(FirstFiles, StandWhateverAServiceCallsItsGauge) {
  FirstValues values;
  values.about.station = "usgs:1";
  values.about.name = "A \"B\" \\ C\n\"mile\": 7, // \x01\xC2\x85*/";
  values.about.state = values.about.site_type = "x\r\n}";
  values.time_zone = "UTC";
  values.zone_from = "x\n";
  values.payloads = "/a \"b\xff";
  for (const Problem& problem : problems_of(values))
    EXPECT_THAT(problem.found, testing::AnyOf(HasSubstr("nothing yet (null)"), HasSubstr("no such directory")))
        << problem.file << ":" << problem.line << " " << problem.pointer;
}

// Names from the recorded answers in fixtures/recorded, and one invented.
TEST(RiverOfAGauge, IsWhatStandsBeforeThePlace) {
  EXPECT_EQ(river_in("YAHARA RIVER AT WINDSOR, WI"), "Yahara River");
  EXPECT_EQ(river_in("WB Susquehanna River at Karthaus, PA"), "WB Susquehanna River");
  EXPECT_EQ(river_in("LANTERN RIVER BL HERON'S DAM, MT"), "Lantern River");
  EXPECT_EQ(river_in("MILL CREEK, MT"), "Mill Creek");
  EXPECT_EQ(river_in(""), "");
}

}  // namespace
}  // namespace floatwright
