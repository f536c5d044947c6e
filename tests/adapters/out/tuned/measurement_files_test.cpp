// Field measurements as they lie in a directory. The rows are those of the recorded files.
#include "adapters/in/gauges/measurement_files.hpp"

#include <gmock/gmock.h>

#include "adapters/in/gauges/verticals_csv.hpp"
#include "engine/units/unit.hpp"
#include "tests/support/run_program.hpp"

namespace floatwright::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

const std::filesystem::path kFixtures = FLOATWRIGHT_SOURCE_DIR "/fixtures";

TEST(MeasurementFiles, InSiAreReadAsTheyStand) {  // USGS 01096500, the first two rows of the recorded file
  const Measurements all = read_measurement_directory(kFixtures / "recorded/usgs-field-measurements");
  EXPECT_THAT(all.troubles, IsEmpty());
  ASSERT_THAT(all.visits, SizeIs(129));
  const FieldMeasurement& first = all.visits[0];
  EXPECT_EQ(first.station, "01096500");
  EXPECT_DOUBLE_EQ(in_cubic_metres_per_second(*first.discharge), 9.741);
  EXPECT_DOUBLE_EQ(in_metres(*first.channels.at(0).width), 28.3464);
  EXPECT_DOUBLE_EQ(in_square_metres(*first.channels.at(0).area), 28.3464 * 0.527664);
  EXPECT_DOUBLE_EQ(first.channels.at(0).speed->si(), 0.652272);
}

TEST(MeasurementFiles, InFeetAreTheSame) {  // NIST SP 811: a foot is 0.3048 m
  const auto read = read_measurements_csv(
      "date,discharge_cfs,width_ft,mean_depth_ft,mean_speed_ft_s\n2026-05-20,100,20,2,2.5\n2026-05-21,100,20,,2.5\n", "own.csv");
  ASSERT_TRUE(read);
  ASSERT_THAT(read->visits, SizeIs(1));
  EXPECT_NEAR(read->visits[0].discharge->si(), 100 * 0.028316846592, 1e-12);
  EXPECT_NEAR(read->visits[0].channels.at(0).area->si(), 40 * 0.3048 * 0.3048, 1e-12);
  EXPECT_THAT(read->troubles, ElementsAre(HasSubstr("own.csv: line 3: left out, it is no whole measurement (mean depth)")));
}

TEST(MeasurementFiles, WithoutAColumnAreToldWhichAreNeeded) {
  const auto read = read_measurements_csv("date,discharge_cfs,width_ft\n2026-05-20,100,20\n", "own.csv");
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().exit_code, 65);
  EXPECT_THAT(read.error().what, HasSubstr("needs the columns date, discharge, width, mean_depth and mean_speed"));
}

constexpr const char* kWaded =
    "station,date,distance_ft,depth_ft,mean_speed_ft_s\n"
    "usgs:00000001,2026-05-20,0,0,0\n,,2,1,1\n,,4,2,1.5\n,,6,0,0\n"
    "usgs:00000001,2026-06-02,0,0,0\n,,2,1,x\n,,4,0,0\n";

TEST(Verticals, OfAVisitAreOneMeasurement) {  // by hand: 1 x 1 x 2 + 1.5 x 2 x 2 = 8 cfs through 6 ft2 over 6 ft
  const auto read = read_verticals_csv(kWaded, "own/waded.csv");
  ASSERT_TRUE(read);
  ASSERT_THAT(read->visits, SizeIs(1));
  const FieldMeasurement& visit = read->visits[0];
  EXPECT_EQ(visit.station, "usgs:00000001");
  EXPECT_EQ(visit.visit, "waded.csv, line 2");
  EXPECT_NEAR(in_cubic_feet_per_second(*visit.discharge), 8.0, 1e-9);
  EXPECT_NEAR(in_feet(*visit.channels.at(0).width), 6.0, 1e-9);
  EXPECT_NEAR(visit.channels.at(0).area->si(), 6.0 * 0.3048 * 0.3048, 1e-12);
  EXPECT_NEAR(in_feet_per_second(*visit.channels.at(0).speed), 8.0 / 6.0, 1e-9);
  EXPECT_THAT(read->troubles,
              ElementsAre("own/waded.csv: the verticals from line 6 are left out: line 7 is no whole vertical (speed)"));
}

// The surface coefficient of 0.85 (Rantz and others 1982, from memory): 2.0 at the surface is 1.70 in the mean.
TEST(Verticals, OfAFloatOnTheSurfaceAreSlowerInTheMean) {
  const auto read = read_verticals_csv("date,distance_m,depth_m,surface_speed_m_s\n2026-05-20,0,0,0\n,1,1,2.0\n,2,0,0\n", "w.csv");
  ASSERT_TRUE(read);
  EXPECT_NEAR(read->visits.at(0).channels.at(0).speed->si(), 1.70, 1e-12);
}

TEST(Verticals, WithoutAUnitAreToldWhatIsNeeded) {
  const auto read = read_verticals_csv("date,distance,depth_ft,mean_speed_ft_s\n2026-05-20,0,0,0\n", "w.csv");
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().exit_code, 65);
  EXPECT_THAT(read.error().what, HasSubstr("w.csv: line 1: verticals need the columns date, distance, depth and mean_speed"));
}

TEST(MeasurementFiles, OfTheServicesAreReadBesideOthers) {
  const Measurements rdb = read_measurement_directory(kFixtures / "recorded/usgs-rdb");
  EXPECT_THAT(rdb.visits, SizeIs(9));
  EXPECT_THAT(read_measurement_directory(kFixtures / "no/such").visits, IsEmpty());
}

}  // namespace
}  // namespace floatwright::testing
