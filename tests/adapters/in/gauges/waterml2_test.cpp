// The recorded answer in fixtures/recorded/waterml2 (USGS, public domain), read by hand; what it has not is made up
// after the standard's form (OGC 10-126, from memory).
#include "adapters/in/gauges/waterml2/read_answer.hpp"

#include <gmock/gmock.h>

#include "adapters/in/calendar/written_time.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

GaugeAnswer answer_of(const std::string& bytes) { return answer_or_told(read_waterml2(bytes, "a.xml")); }

const std::string kNames =
    R"( xmlns="http://www.opengis.net/waterml/2.0" xmlns:gml="http://www.opengis.net/gml/3.2" xmlns:om="http://www.opengis.net/om/2.0" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:swe="http://www.opengis.net/swe/2.0")";

std::string series(const std::string& standard, const std::string& points, const std::string& names = "") {
  return "<MeasurementTimeseries" + names + R"( gml:id="ts"><defaultPointMetadata><DefaultTVPMeasurementMetadata>)" +
         standard + "</DefaultTVPMeasurementMetadata></defaultPointMetadata>" + points + "</MeasurementTimeseries>";
}
std::string collection(const std::string& inner, const std::string& property = "Discharge") {
  return "<Collection" + kNames +
         R"(><observationMember><om:OM_Observation gml:id="o"><om:observedProperty xlink:title=")" + property +
         R"("/><om:featureOfInterest xlink:href="http://gauges.example/lantern-1" xlink:title="Lantern"/><om:result>)" +
         inner + "</om:result></om:OM_Observation></observationMember></Collection>";
}
std::string point(const std::string& time, const std::string& value, const std::string& before = "") {
  return "<point><MeasurementTVP>" + before + "<time>" + time + "</time>" + value + "</MeasurementTVP></point>";
}
std::string facts(const std::string& all) {
  return "<metadata><TVPMeasurementMetadata>" + all + "</TVPMeasurementMetadata></metadata>";
}
const std::string kCubicMetres = R"(<uom code="m3/s"/>)";

TEST(Waterml2, OfDaysIsReadWithItsEmptyFirstPointPassedOver) {
  const auto answer = answer_of(recorded("waterml2/WaterML2Example_USGS_dv_01646500_2014.xml"));
  ASSERT_THAT(answer.series, SizeIs(1));
  const GaugeSeries& days = answer.series[0];
  EXPECT_EQ(days.station, "usgs:01646500");
  EXPECT_EQ(days.series_id, "TS.USGS.01646500.00060.1.00003");
  EXPECT_EQ(days.station_name, "POTOMAC RIVER NEAR WASH, DC LITTLE FALLS PUMP STA");
  EXPECT_EQ(days.variable, Variable::Flow);
  EXPECT_TRUE(days.daily);
  ASSERT_THAT(days.readings, SizeIs(8));
  EXPECT_EQ(days.readings.front().time, *instant_in("2014-09-01T00:00:00Z"));
  EXPECT_DOUBLE_EQ(*days.readings.front().si, cubic_feet_per_second(2690).si());
  EXPECT_DOUBLE_EQ(*days.readings.back().si, cubic_feet_per_second(2300).si());
  EXPECT_EQ(days.readings.back().marks, Marks{Mark::Provisional});
  EXPECT_THAT(answer.doubts, IsEmpty());
}

TEST(Waterml2, HasManyWaysToSayMissing) {
  const auto answer = answer_of(collection(series(
      kCubicMetres, point("2026-05-13T12:00:00Z", R"(<value xsi:nil="true"/>)") +
                        point("2026-05-13T13:00:00Z", "<value/>") +
                        point("2026-05-13T14:00:00Z", "<value>NaN</value>") + point("2026-05-13T15:00:00Z", "") +
                        point("2026-05-13T16:00:00Z", "<value>-9</value>",
                              facts(R"(<nilReason xlink:href="http://www.opengis.net/def/nil/OGC/0/missing"/>)")) +
                        point("2026-05-13T17:00:00+01:00", "<value>12.5</value>"))));
  ASSERT_THAT(answer.series, SizeIs(1));
  EXPECT_EQ(answer.series[0].station, "waterml2:lantern-1");
  ASSERT_THAT(answer.series[0].readings, SizeIs(5));  // the last at 16:00Z is written later than the nil there
  EXPECT_EQ(*answer.series[0].readings.back().si, 12.5);
  for (int i = 0; i < 4; ++i) EXPECT_FALSE(answer.series[0].readings[static_cast<std::size_t>(i)].si.has_value()) << i;
}

TEST(Waterml2, LetsAPointsOwnFactsTakeThePlaceOfTheDefaults) {
  const std::string standard = kCubicMetres +
                               R"(<qualifier><swe:Category><swe:value>P</swe:value></swe:Category></qualifier>)"
                               R"(<quality xlink:href="http://www.opengis.net/def/waterml/2.0/quality/estimate"/>)";
  const auto answer = answer_of(collection(series(
      standard,
      point("2026-05-13T12:00:00Z", "<value>1</value>") +
          point("2026-05-13T13:00:00Z",
                "<value>2</value>" +
                    facts(R"(<quality xlink:href="http://x/quality/good"/><uom xlink:title="ft3/s"/>)")) +
          point(
              "2026-05-13T14:00:00Z", "<value>3</value>",
              facts(
                  R"(<qualifier><swe:Category><swe:value>Ice</swe:value></swe:Category></qualifier><quality xlink:title="odd"/>)")))));
  const auto& rows = answer.series.at(0).readings;
  ASSERT_THAT(rows, SizeIs(3));
  EXPECT_EQ(rows[0].marks, (Marks{Mark::Provisional, Mark::Estimated}));
  EXPECT_EQ(rows[1].marks, Marks{Mark::Provisional});
  EXPECT_DOUBLE_EQ(*rows[1].si, cubic_feet_per_second(2).si());
  EXPECT_EQ(rows[2].marks, (Marks{Mark::Ice, Mark::Unknown}));
  EXPECT_EQ(*rows[2].si, 3.0);
  EXPECT_THAT(answer.series[0].unknown_codes, ElementsAre("odd"));
}

TEST(Waterml2, WithoutAnObservationIsReadWhereItsUnitCanBeNothingElse) {
  const std::string row = point("2026-05-13T12:00:00Z", "<value>1</value>");
  const auto flow = answer_of(series(kCubicMetres, row, kNames));
  ASSERT_THAT(flow.series, SizeIs(1));
  EXPECT_EQ(flow.series[0].station, "waterml2:ts");
  EXPECT_THAT(flow.notes, ElementsAre(HasSubstr("read as discharge by its unit")));
  const auto unknown = answer_of(series(R"(<uom code="m"/>)", row, kNames));
  EXPECT_THAT(unknown.series, IsEmpty());
  EXPECT_THAT(unknown.doubts,
              ElementsAre(HasSubstr("1 row left out: no observation around it says what was measured")));
}

TEST(Waterml2, LeavesOutWhatCantBeReadAndSaysWhy) {
  const auto answer = answer_of(collection(
      series(kCubicMetres + "<aggregationDuration>P1D</aggregationDuration>",
             point("2026-05-13T12:00:00", "<value>1</value>") + point("2026-05-13T12:00:00Z", "<value>2</value>") +
                 "<point><MeasurementTVP><value>3</value></MeasurementTVP></point>" +
                 point("2026-05-13", "<value>x y</value>"))));
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.doubts, SizeIs(4));
  EXPECT_THAT(answer_of(collection(series("<uom code=\"%\"/>", point("2026-05-13", "<value>1</value>")))).doubts,
              ElementsAre(HasSubstr("the unit \"%\" is not known")));
  EXPECT_THAT(answer_of(collection(series(kCubicMetres, point("2026-05-13", "<value>1</value>")), "Rainfall")).notes,
              ElementsAre(HasSubstr("property \"Rainfall\": 1 row left out")));
}

TEST(Waterml2, ThatIsNoneIsTold) {
  const auto other = read_waterml2("<a/>", "a.xml");
  ASSERT_FALSE(other.has_value());
  EXPECT_EQ(other.error().what, "a.xml: no MeasurementTimeseries of WaterML 2.0 under the root element \"a\"");
  EXPECT_THAT(answer_of("<Collection" + kNames + "/>").series, IsEmpty());
}

}  // namespace
}  // namespace floatwright
