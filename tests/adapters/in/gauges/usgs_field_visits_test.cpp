// Recorded answers (fixtures/recorded/usgs-water-data), read off the files by hand; version 1 as the service's notice
// of 4 September 2026 says that it differs.
#include "adapters/in/gauges/usgs_water_data/field_visits.hpp"

#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

UsgsFieldVisits::Told told(const std::vector<std::string>& pages) {
  UsgsFieldVisits all;
  for (const std::string& page : pages) {
    const auto next = all.take(page, "a.json");
    EXPECT_TRUE(next.has_value()) << (next ? "" : next.error().what);
  }
  return all.told();
}

std::string reading(const std::string& parameter, const std::string& type, const std::string& value,
                    const std::string& when, const std::string& rest = "") {
  return R"({"type":"Feature","properties":{"field_visit_id":"v1","monitoring_location_id":"USGS-00000001",)"
         R"("parameter_code":")" +
         parameter + R"(","reading_type":")" + type + R"(","value":")" + value + R"(","unit_of_measure":")" +
         (parameter == "00060" ? "ft^3/s" : "ft") + R"(","approval_status":"Approved",)" + when + rest + "}}";
}
std::string channel(const std::string& width, const std::string& unit = "ft", const std::string& type = "Wading") {
  return R"({"type":"Feature","properties":{"field_visit_id":"v1","monitoring_location_id":"USGS-00000001",)"
         R"("time":"2026-05-13T12:00:00+00:00","channel_name":"main","measurement_type":")" +
         type + R"(","channel_width":")" + width + R"(","channel_width_unit":")" + unit + R"("}})";
}
const std::string kNoon = R"("time":"2026-05-13","time_of_day":"12:00:00+00:00","year":2026,"month":5,"day":13)";

TEST(UsgsFieldVisits, AreReadAsRecorded) {
  const auto all = told({recorded("usgs-water-data/v0_field-measurements.json")});
  ASSERT_EQ(all.visits.size(), 2u);
  EXPECT_THAT(all.notes, IsEmpty());
  EXPECT_EQ(all.visits[0].time, instant_in("2014-06-19T16:00:27Z"));
  EXPECT_DOUBLE_EQ(in_feet(all.visits[0].stage.value()), 3.14);
  EXPECT_FALSE(all.visits[0].discharge.has_value());
  EXPECT_EQ(all.visits[0].marks, Marks{Mark::Provisional});
  const FieldMeasurement& measured = all.visits[1];
  EXPECT_EQ(measured.station, "usgs:05427718");
  EXPECT_EQ(measured.time, instant_in("2023-11-01T14:49:30Z"));
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(measured.discharge.value()), 16.6);
  EXPECT_EQ(measured.rated, "Good");
  EXPECT_EQ(measured.condition, "Clear");
  EXPECT_FALSE(measured.ice);
  EXPECT_EQ(measured.marks, Marks{Mark::Approved});
}

TEST(UsgsFieldVisits, HaveTheirChannelsAsRecorded) {
  const auto all = told({recorded("usgs-water-data/v0_channel-measurements.json")});
  ASSERT_EQ(all.visits.size(), 2u);
  EXPECT_THAT(all.notes, IsEmpty());
  EXPECT_EQ(all.visits[0].time, instant_in("1994-07-18T20:06:00Z"));
  EXPECT_FALSE(all.visits[0].channels.at(0).from_gauge.has_value());
  const MeasuredChannel& main = all.visits[1].channels.at(0);
  EXPECT_EQ(main.name, "main.");
  EXPECT_EQ(main.type, "Wading");
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(main.discharge.value()), 10.6);
  EXPECT_DOUBLE_EQ(in_feet(main.width.value()), 12.5);
  EXPECT_NEAR(main.area.value().si(), 9.53 * 0.09290304, 1e-12);  // the square foot, NIST SP 811
  EXPECT_DOUBLE_EQ(in_feet_per_second(main.speed.value()), 1.12);
  EXPECT_DOUBLE_EQ(in_feet(main.from_gauge.value()), 20.0);
  EXPECT_EQ(main.direction, "Downstream");
}

TEST(UsgsFieldVisits, AreJoinedWithTheStageOfTheDischarge) {
  const std::string readings =
      features(reading("00065", "ReferencePrimary", "2.0", R"("time":"2026-05-13T11:00:00+00:00")") + "," +
               reading("00065", "ReferencePrimary", "3.0", R"("time":"2026-05-13T12:10:00+00:00")") + "," +
               reading("00060", "Discharge", "100", kNoon));
  const auto nearest = told({readings, features(channel("40"))});
  ASSERT_EQ(nearest.visits.size(), 1u);
  EXPECT_EQ(nearest.visits[0].time, instant_in("2026-05-13T12:00:00Z"));
  EXPECT_DOUBLE_EQ(in_feet(nearest.visits[0].stage.value()), 3.0);
  EXPECT_DOUBLE_EQ(in_feet(nearest.visits[0].channels.at(0).width.value()), 40.0);
  const auto mean = told({features(reading("00065", "MeanGageHeight", "2.5", kNoon)), readings});
  EXPECT_DOUBLE_EQ(in_feet(mean.visits.at(0).stage.value()), 2.5);
}

TEST(UsgsFieldVisits, KnowWhatIsNotKnownOfTheirTime) {
  const auto date = told(
      {features(reading("00060", "Discharge", "1", R"("time":"1920-05-13","time_of_day":null,"month":5,"day":13)"))});
  EXPECT_EQ(date.visits.at(0).time, date_label_in("1920-05-13"));
  EXPECT_TRUE(date.visits.at(0).date_only);
  const auto month = told(
      {features(reading("00060", "Discharge", "1", R"("time":"1920-05-01","time_of_day":null,"month":5,"day":null)"))});
  EXPECT_FALSE(month.visits.at(0).time.has_value());
}

TEST(UsgsFieldVisits, SayIceWhereverItIsWritten) {
  EXPECT_TRUE(told({features(channel("40", "ft", "Ice"))}).visits.at(0).ice);
  EXPECT_TRUE(told({features(reading("00060", "Discharge", "1", kNoon, R"(,"control_condition":"Ice cover")"))})
                  .visits.at(0)
                  .ice);
  EXPECT_FALSE(
      told({features(reading("00060", "Discharge", "1", kNoon, R"(,"control_condition":"Device")"))}).visits.at(0).ice);
}

TEST(UsgsFieldVisits, LeaveOutWhatTheyCannotReadAndSayWhere) {
  const auto all = told({features(channel("40", "rod") + "," + channel("wide") + "," + channel(""))});
  EXPECT_EQ(all.visits.at(0).channels.size(), 3u);
  EXPECT_THAT(all.notes, ElementsAre(HasSubstr("/features/0: left out, the unit \"rod\" is not known"),
                                     HasSubstr("/features/1: left out, the value \"wide\" is not a finite number")));
  const auto twice =
      told({features(reading("00060", "Discharge", "1", kNoon) + "," + reading("00060", "Discharge", "2", kNoon))});
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(twice.visits.at(0).discharge.value()), 1.0);
  EXPECT_THAT(twice.notes, ElementsAre(HasSubstr("discharge measured more than once; the first is kept")));
  UsgsFieldVisits none;
  EXPECT_THAT(none.take(recorded("usgs-water-data/v0_daily.json"), "a").error().what, HasSubstr("no field visits"));
  EXPECT_TRUE(is_usgs_field_visits(recorded("usgs-water-data/v0_channel-measurements.json")));
  EXPECT_FALSE(is_usgs_field_visits(recorded("usgs-water-data/v0_daily.json")));
}

}  // namespace
}  // namespace floatwright
