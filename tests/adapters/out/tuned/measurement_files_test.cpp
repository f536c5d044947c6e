// Field measurements as they lie in a directory. The rows are those of the recorded files.
#include "adapters/in/gauges/measurement_files.hpp"

#include <gmock/gmock.h>

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

TEST(MeasurementFiles, OfTheServicesAreReadBesideOthers) {
  const Measurements rdb = read_measurement_directory(kFixtures / "recorded/usgs-rdb");
  EXPECT_THAT(rdb.visits, SizeIs(9));
  EXPECT_THAT(read_measurement_directory(kFixtures / "no/such").visits, IsEmpty());
}

}  // namespace
}  // namespace floatwright::testing
