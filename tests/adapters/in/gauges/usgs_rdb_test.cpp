// Recorded files in fixtures/recorded/usgs-rdb (USGS, public domain), read by hand. No recording of unit values in this
// form is held: theirs are written here after the agency's description, with the values that the same service gave as
// JSON for the same hours (fixtures/recorded/usgs-legacy, 01541000 in the autumn of 2018).
#include <date/tz.h>
#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/usgs_rdb/read_answer.hpp"
#include "adapters/in/gauges/usgs_rdb/read_measurements.hpp"
#include "adapters/in/gauges/usgs_rdb/read_rating.hpp"
#include "adapters/in/gauges/usgs_rdb/read_stations.hpp"
#include "adapters/in/gauges/usgs_rdb/zone_code.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

GaugeAnswer answer_of(const std::string& bytes) { return answer_or_told(read_usgs_rdb(bytes, "a.rdb")); }
std::string failure_of(const std::string& bytes) { return failure_told(read_usgs_rdb(bytes, "a.rdb")); }

const std::string kHead =
    "# comment\nagency_cd\tsite_no\tdatetime\ttz_cd\t121813_00060\t121813_00060_cd\n5s\t15s\t20d\t6s\t14n\t10s\n";

TEST(UsgsRdb, OfUnitValuesTellsTheRepeatedHourByItsZoneCode) {
  const auto answer = answer_of(kHead +
                                "USGS\t01541000\t2018-11-04 01:45\tEDT\t858\tP\n"
                                "USGS\t01541000\t2018-11-04 01:00\tEST\t858\tP:e\n"
                                "USGS\t01541000\t2018-11-04 01:30\tEST\t852\tP\r\n"
                                "USGS\t01541000\t2018-11-04 01:45\tEST\tIce\tP\n"
                                "USGS\t01541000\t2018-11-04 02:00\tEST\t\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  const GaugeSeries& series = answer.series[0];
  EXPECT_EQ(series.station, "usgs:01541000");
  EXPECT_EQ(series.series_id, "USGS:01541000:00060:00000:121813");
  EXPECT_FALSE(series.daily);
  ASSERT_THAT(series.readings, SizeIs(4));
  EXPECT_EQ(series.readings[0].time, *instant_in("2018-11-04T05:45:00Z"));
  EXPECT_EQ(series.readings[1].time, *instant_in("2018-11-04T06:00:00Z"));
  EXPECT_EQ(series.readings[1].marks, (Marks{Mark::Provisional, Mark::Estimated}));
  EXPECT_DOUBLE_EQ(*series.readings[2].si, cubic_feet_per_second(852).si());
  EXPECT_FALSE(series.readings[3].si.has_value());
  EXPECT_EQ(series.readings[3].marks, (Marks{Mark::Provisional, Mark::Ice}));
  EXPECT_THAT(answer.notes, IsEmpty());
}

// The row is the one of the service's own example of daily values.
TEST(UsgsRdb, OfDaysWithSeveralColumnsAndStationsGivesEachItsSeries) {
  const auto answer = answer_of(
      "#\nagency_cd\tsite_no\tdatetime\t01_00060_00003\t01_00060_00003_cd\t02_00010_00001\t02_00010_00001_cd\t03_00095_"
      "00003\t03_00095_00003_cd\n"
      "5s\t15s\t20d\t14n\t10s\t14n\t10s\t14n\t10s\n"
      "USGS\t02177000\t2012-09-01\t191\tA\n"
      "USGS\t02177000\t2012-09-02\t\t\t21.5\tA:R\t88\tA\n"
      "#\nagency_cd\tsite_no\tdatetime\t44_00065_00003\t44_00065_00003_cd\n5s\t15s\t20d\t14n\t10s\n"
      "MN040\t05427718\t2012-09-01\t2.50\tP\n");
  ASSERT_THAT(answer.series, SizeIs(3));
  EXPECT_TRUE(answer.series[0].daily);
  EXPECT_EQ(answer.series[0].series_id, "USGS:02177000:00060:00003:01");
  ASSERT_THAT(answer.series[0].readings, SizeIs(1));
  EXPECT_DOUBLE_EQ(*answer.series[0].readings[0].si, cubic_feet_per_second(191).si());
  ASSERT_THAT(answer.series[1].readings, SizeIs(1));
  EXPECT_EQ(answer.series[1].readings[0].time, *instant_in("2012-09-02T00:00:00Z"));
  EXPECT_DOUBLE_EQ(*answer.series[1].readings[0].si, 21.5);
  EXPECT_EQ(answer.series[1].readings[0].marks, (Marks{Mark::Approved, Mark::Revised}));
  EXPECT_EQ(answer.series[2].station, "usgs:MN040-05427718");
  EXPECT_DOUBLE_EQ(*answer.series[2].readings[0].si, stage_feet(2.5).si());
  EXPECT_THAT(answer.notes, Contains("parameter 00095: 2 rows left out: it is not used here"));
}

TEST(UsgsRdb, LeavesOutRowsThatCantBeReadAndSaysWhere) {
  const auto answer = answer_of(kHead +
                                "USGS\t1\t1881-00-00 00:00\tEST\t1\tP\nUSGS\t1\t2018-11-04 01:45\tXYZ\t2\tP\n"
                                "USGS\t1\t2018-11-04\tEST\t3\tP\nUSGS\t1\t2018-11-04 01:45\tEST\t1e999\tP\n"
                                "USGS\t1\t2018-11-04 01:45\tEST\t4\tP\tQ\nUSGS\t\t2018-11-04 01:45\tEST\t5\tP\n"
                                "USGS\t1\t2018-11-04 01:45\tEST\t-7\tP\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  ASSERT_THAT(answer.series[0].readings, SizeIs(1));
  EXPECT_DOUBLE_EQ(*answer.series[0].readings[0].si, cubic_feet_per_second(-7).si());
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("with the zone \"XYZ\" (first at line 5)")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("7 fields where the head names 6 (first at line 8)")));
  EXPECT_THAT(answer.doubts, SizeIs(6));
}

TEST(UsgsRdb, WithoutRowsHoldsNothing) {
  EXPECT_THAT(answer_of(kHead).series, IsEmpty());
  EXPECT_THAT(answer_of("#  No sites found matching all criteria\n").series, IsEmpty());
}

TEST(UsgsRdb, ThatHoldsNoReadingsIsToldAsWhatItIs) {
  const auto told = [](const std::string& file) { return failure_of(recorded("usgs-rdb/" + file)); };
  EXPECT_EQ(told("peaks_06813500_bad_date_1881-00-00.rdb"),
            "a.rdb: a list of the highest flow of each year, which holds no readings of a gauge");
  EXPECT_THAT(told("rating_base_01594440.rdb"), HasSubstr("a rating (stage to discharge)"));
  EXPECT_THAT(told("measurements_expanded_01541200_9rows.rdb"), HasSubstr("a list of field measurements"));
  EXPECT_THAT(told("site_info.rdb"), HasSubstr("a list of stations"));
  EXPECT_THAT(failure_of("a\tb\n5s\t5s\n"), HasSubstr("no columns site_no and datetime"));
  EXPECT_THAT(failure_of("a\tb\n1\t2\n"), HasSubstr("line 2: no line of formats"));
  EXPECT_THAT(failure_of("<html>"), HasSubstr("a web page or XML, not tab-separated text"));
  EXPECT_THAT(failure_of(""), HasSubstr("empty"));
  EXPECT_THAT(failure_of("# a\n# \xC3\n"), HasSubstr("line 2, column 3: not UTF-8"));
}

TEST(UsgsRdb, OfFieldMeasurementsGivesVisitsWithTheirChannels) {
  const auto read = read_usgs_rdb_measurements(recorded("usgs-rdb/measurements_expanded_01541200_9rows.rdb"), "m.rdb");
  ASSERT_TRUE(read.has_value()) << read.error().what;
  ASSERT_THAT(read->visits, SizeIs(9));
  EXPECT_THAT(read->notes, IsEmpty());
  const FieldMeasurement& flood = read->visits[6];
  EXPECT_EQ(flood.station, "usgs:01541200");
  EXPECT_EQ(flood.visit, "7");
  EXPECT_EQ(flood.time, *instant_in("1956-03-08T00:00Z"));
  EXPECT_TRUE(flood.date_only);
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(*flood.discharge), 6750.0);
  EXPECT_DOUBLE_EQ(in_feet(*flood.stage), 8.94);
  EXPECT_EQ(flood.rated, "Good");
  ASSERT_THAT(flood.channels, SizeIs(1));
  EXPECT_EQ(flood.channels[0].type, "CRAN");
  EXPECT_DOUBLE_EQ(in_feet(*flood.channels[0].width), 218.0);
  EXPECT_NEAR(flood.channels[0].area->si(), 1610.0 * 0.3048 * 0.3048, 1e-9);
  EXPECT_DOUBLE_EQ(in_feet_per_second(*flood.channels[0].speed), 4.19);
  EXPECT_FALSE(read->visits[0].channels.at(0).width.has_value());
}

// After the same form, which no recorded visit fills so far.
TEST(UsgsRdb, OfFieldMeasurementsJoinsTheChannelsOfAVisitAndTellsIce) {
  const auto read = read_usgs_rdb_measurements(
      "agency_cd\tsite_no\tmeasurement_nu\tmeasurement_dt\ttz_cd\tgage_height_va\tdischarge_va\tcontrol_type_cd\tchan_"
      "nu\tmeas_type\tchan_discharge\tchan_width\n"
      "5s\t15s\t6s\t19d\t12s\t12s\t12s\t21s\t6s\t11n\t14n\t14n\n"
      "USGS\t1\t5\t2010-01-02 10:30:00\tMST\t2.5\t100\tIceCover\t1\tICE\t60\t30\n"
      "USGS\t1\t5\t2010-01-02 10:30:00\tMST\t2.5\t100\tIceCover\t2\tICE\t40\t20\n"
      "USGS\t1\t6\t1881-00-00\t\t2.5\t100\nUSGS\t1\t7\t2010-06-02\t\t2.5\t1e999\n",
      "m.rdb");
  ASSERT_TRUE(read.has_value()) << read.error().what;
  ASSERT_THAT(read->visits, SizeIs(2));
  EXPECT_EQ(read->visits[0].time, *instant_in("2010-01-02T17:30Z"));
  EXPECT_FALSE(read->visits[0].date_only);
  EXPECT_TRUE(read->visits[0].ice);
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(*read->visits[0].discharge), 100.0);
  ASSERT_THAT(read->visits[0].channels, SizeIs(2));
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(*read->visits[0].channels[1].discharge), 40.0);
  EXPECT_FALSE(read->visits[1].discharge.has_value());
  EXPECT_THAT(read->notes, ElementsAre(HasSubstr("line 5: left out: the time can't be read, first \"1881-00-00\""),
                                       HasSubstr("line 6: discharge_va left out: \"1e999\" is no number")));
}

TEST(UsgsRdb, OfStationsGivesTheirPlaces) {
  const auto stations = read_usgs_rdb_stations(recorded("usgs-rdb/site_info.rdb"), "s.rdb");
  ASSERT_TRUE(stations.has_value()) << stations.error().what;
  ASSERT_THAT(*stations, SizeIs(2));
  EXPECT_EQ(stations->at(1).station, "usgs:01645000");
  EXPECT_EQ(stations->at(1).name, "SENECA CREEK AT DAWSONVILLE, MD");
  EXPECT_EQ(stations->at(1).site_type, "ST");
  EXPECT_DOUBLE_EQ(*stations->at(1).latitude_deg, 39.1280833);
  EXPECT_DOUBLE_EQ(*stations->at(1).longitude_deg, -77.33577778);
  EXPECT_DOUBLE_EQ(in_feet(*stations->at(1).altitude), 213.31);
  EXPECT_FALSE(read_usgs_rdb_stations(recorded("usgs-rdb/rating_base_01594440.rdb"), "s.rdb").has_value());
}

// Against the zone database of the system (package tzdata).
TEST(UsgsZoneCodes, AreThoseOfTheZoneDatabase) {
  const std::vector<std::pair<std::string, std::string>> kZones{
      {"America/New_York", "E"},    {"America/Chicago", "C"},    {"America/Denver", "M"},
      {"America/Los_Angeles", "P"}, {"America/Anchorage", "AK"}, {"America/Puerto_Rico", "A"},
      {"Pacific/Honolulu", "H"},    {"Pacific/Guam", "Ch"},      {"Pacific/Pago_Pago", "S"},
      {"America/Halifax", "A"},     {"America/Adak", "H"},       {"Etc/UTC", ""}};
  for (const auto& [zone, letter] : kZones) {
    for (const char* const day : {"2026-01-15T12:00Z", "2026-07-15T12:00Z"}) {
      const auto info = date::locate_zone(zone)->get_info(date::sys_seconds{instant_in(day)->time_since_epoch()});
      EXPECT_EQ(east_of_greenwich(info.abbrev), info.offset) << zone << " " << info.abbrev;
      EXPECT_THAT(info.abbrev, HasSubstr(letter));
    }
  }
  EXPECT_FALSE(east_of_greenwich("BST").has_value());
}

// USGS expanded this table from its base rating by logarithms of stage less the offset of 2.00 ft that it names; the
// rows between its ends are recomputed from the ends alone. Ends and rows are rounded to 0.01 ft3/s.
TEST(UsgsRating, IsInterpolatedAsTheAgencyExpandsIt) {
  const std::string text = recorded("usgs-rdb/rating_exsa_01541303_9rows.rdb");
  const auto table = read_usgs_rdb_rating(text, "r.rdb");
  ASSERT_TRUE(table.has_value()) << table.error().what;
  EXPECT_EQ(table->station, "usgs:01541303");
  EXPECT_EQ(table->id, "11.0");
  EXPECT_TRUE(table->shifted);
  ASSERT_THAT(table->points, SizeIs(9));
  Rating ends = *table;
  ends.points = {table->points.front(), table->points.back()};
  ends.between = Rating::Between::Logarithmic;
  ends.offsets = {{stage_feet(0.0), stage_feet(2.0)}};
  for (const RatingPoint& row : table->points) {
    EXPECT_NEAR(in_cubic_feet_per_second(*flow_at(ends, row.stage)), in_cubic_feet_per_second(row.flow), 0.015);
    EXPECT_NEAR(in_feet(*stage_at(ends, row.flow)), in_feet(row.stage), 0.0002);
    EXPECT_DOUBLE_EQ(flow_at(*table, row.stage)->si(), row.flow.si());
  }
  EXPECT_NEAR(in_cubic_feet_per_second(*flow_at(*table, stage_feet(2.505))), 0.5 * (27.90 + 29.25), 1e-9);
}

// Worked by hand: b = ln(225/110) / ln(3/2), Q(4.5) = 110 * (2.5/2)^b.
TEST(UsgsRating, OfDefiningPointsHasItsOffsetAndNoAnswerOutside) {
  const auto rating = read_usgs_rdb_rating(recorded("usgs-rdb/rating_base_01594440.rdb"), "r.rdb");
  ASSERT_TRUE(rating.has_value()) << rating.error().what;
  EXPECT_EQ(rating->station, "usgs:01594440");
  EXPECT_EQ(rating->between, Rating::Between::Logarithmic);
  ASSERT_THAT(rating->offsets, SizeIs(1));
  EXPECT_DOUBLE_EQ(in_feet(rating->offsets[0].zero), 2.0);
  ASSERT_THAT(rating->points, SizeIs(11));
  EXPECT_NEAR(in_cubic_feet_per_second(*flow_at(*rating, stage_feet(4.5))), 163.0920, 0.0001);
  EXPECT_DOUBLE_EQ(in_cubic_feet_per_second(*flow_at(*rating, stage_feet(27.9))), 31100.0);
  EXPECT_THAT(flow_at(*rating, stage_feet(2.98)).why_absent(),
              "a stage of 2.98 ft is outside the rating, which goes from 2.99 to 27.90 ft");
  EXPECT_FALSE(flow_at(*rating, stage_feet(27.91)).has_value());
  EXPECT_FALSE(flow_at(*rating, stage_feet(std::numeric_limits<double>::quiet_NaN())).has_value());
  EXPECT_THAT(stage_at(*rating, cubic_feet_per_second(31101)).why_absent(), HasSubstr("from 30 to 31100 cfs"));
}

std::string rating_text(const std::string& facts, const std::string& rows) {
  return "# //STATION AGENCY=\"USGS \" NUMBER=\"00000001       \" TIME_ZONE=\"MST\"\n"
         "# //RATING ID=\"3.0\" TYPE=\"STGQ\" NAME=\"stage-discharge\"\n"
         "# //RATING_INDEP ROUNDING=\"????\" PARAMETER=\"Gage height (ft)\"\n"
         "# //RATING_DEP ROUNDING=\"????\" PARAMETER=\"Discharge (ft^3/s)\"\n" +
         facts + "INDEP\tDEP\tSTOR\n16N\t16N\t1S\n" + rows;
}
std::string rating_failure(const std::string& text) {
  const auto rating = read_usgs_rdb_rating(text, "r.rdb");
  return rating ? "no failure" : rating.error().what;
}
const std::string kLogarithmic = "# //RATING EXPANSION=\"logarithmic\"\n# //RATING OFFSET1=1.0\n";

// The form of these two lines is as public importers of such files read it; none was held.
TEST(UsgsRating, MayHaveAnOffsetForItsUpperPart) {
  const auto rating = read_usgs_rdb_rating(
      rating_text(
          "# //RATING EXPANSION=\"logarithmic\"\n# //RATING BREAKPOINT1=4.0\n# //RATING OFFSET1=1.0 OFFSET2=2.0\n",
          "2.0\t10\t*\n4.0\t90\n6.0\t360\t*\n"),
      "r.rdb");
  ASSERT_TRUE(rating.has_value()) << rating.error().what;
  // Under the breakpoint 10 (h - 1)^2, over it 22.5 (h - 2)^2.
  EXPECT_NEAR(in_cubic_feet_per_second(*flow_at(*rating, stage_feet(3.0))), 40.0, 1e-9);
  EXPECT_NEAR(in_cubic_feet_per_second(*flow_at(*rating, stage_feet(5.0))), 202.5, 1e-9);
}

TEST(UsgsRating, IsLinearWhereItSaysSoOrNoLogarithmCanBe) {
  const auto flow = [](const std::string& facts, double stage) {
    const auto rating = read_usgs_rdb_rating(rating_text(facts, "1.0\t0\n2.0\t10\n3.0\t40\n"), "r.rdb");
    return rating ? in_cubic_feet_per_second(*flow_at(*rating, stage_feet(stage))) : -1.0;
  };
  EXPECT_NEAR(flow("# //RATING EXPANSION=\"linear\"\n", 2.5), 25.0, 1e-9);
  EXPECT_NEAR(flow(kLogarithmic, 1.5), 5.0, 1e-9);   // without flow at its lower end
  EXPECT_NEAR(flow(kLogarithmic, 2.5), 22.5, 1e-9);  // 10 (h - 1)^2
}

TEST(UsgsRating, IsToldWhenItCantBeRead) {
  EXPECT_THAT(rating_failure(rating_text(kLogarithmic, "2.0\t10\n1.0\t20\n")),
              HasSubstr("line 10: the stage does not rise"));
  EXPECT_THAT(rating_failure(rating_text(kLogarithmic, "2.0\t10\n3.0\t9\n")), HasSubstr("the discharge falls"));
  EXPECT_THAT(rating_failure(rating_text(kLogarithmic, "2.0\t\n")), HasSubstr("are no stage and discharge"));
  EXPECT_THAT(rating_failure(rating_text(kLogarithmic, "2.0\t10\n")), HasSubstr("1 points, too few"));
  EXPECT_THAT(rating_failure(rating_text("", "2.0\t10\n")), HasSubstr("the interpolation \"\" is not known"));
  EXPECT_THAT(rating_failure(rating_text("# //RATING EXPANSION=\"logarithmic\"\n", "")),
              HasSubstr("no readable OFFSET1"));
  EXPECT_THAT(rating_failure(kHead), HasSubstr("no columns INDEP and DEP"));
  EXPECT_THAT(rating_failure(recorded("usgs-rdb/peaks_06813500_bad_date_1881-00-00.rdb")),
              HasSubstr("no columns INDEP"));
}

}  // namespace
}  // namespace floatwright
