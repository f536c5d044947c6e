// Recorded answers in fixtures/recorded/usgs-waterml1 (USGS, public domain); their numbers were read with Python's own
// XML reader. What no recording holds is made up after the agency's form.
#include "adapters/in/gauges/usgs_waterml1/read_answer.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <chrono>
#include <string>

#include "adapters/in/calendar/written_time.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

GaugeAnswer answer_of(const std::string& bytes) { return answer_or_told(read_usgs_waterml1(bytes, "a.xml")); }

std::string failure_of(const std::string& bytes) { return failure_told(read_usgs_waterml1(bytes, "a.xml")); }

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

// An answer with a default prefix, which the recorded ones have not.
std::string entry(const std::string& blocks, const std::string& unit = "ft3/s",
                  const std::string& statistic = "00000") {
  return R"(<timeSeriesResponse xmlns="http://www.cuahsi.org/waterML/1.1/"><queryInfo/><timeSeries><sourceInfo>)"
         R"(<siteName>Lantern</siteName><siteCode agencyCode="USGS">00000001</siteCode></sourceInfo><variable>)"
         "<variableCode>00060</variableCode><unit><unitCode>" +
         unit + R"(</unitCode></unit><options><option name="Statistic" optionCode=")" + statistic +
         R"("/></options><noDataValue>-999999</noDataValue></variable>)" + blocks +
         "</timeSeries></timeSeriesResponse>";
}
std::string values(const std::string& rows) {
  return "<values>" + rows + R"(<method methodID="7"><methodDescription/></method></values>)";
}
const std::string kRow = R"(<value qualifiers="P e" dateTime="2026-05-13T12:00:00.000-06:00">100</value>)";

TEST(UsgsWaterml1, OfASiteWithoutDaylightSavingKeepsItsOffsetInMay) {
  const auto answer = answer_of(recorded("usgs-waterml1/WaterML1Example_01491000_no_dst_site_2012-05.xml"));
  ASSERT_THAT(answer.series, SizeIs(1));
  const GaugeSeries& series = answer.series[0];
  EXPECT_EQ(series.station, "usgs:01491000");
  EXPECT_EQ(series.series_id, "USGS:01491000:00060:00000:2");
  EXPECT_EQ(series.station_name, "CHOPTANK RIVER NEAR GREENSBORO, MD");
  EXPECT_FALSE(series.daily);
  ASSERT_THAT(series.readings, SizeIs(192));
  EXPECT_EQ(series.readings.front().time, *instant_in("2012-05-12T05:00:00Z"));
  EXPECT_DOUBLE_EQ(*series.readings.front().si, cubic_feet_per_second(83).si());
  EXPECT_EQ(series.readings.back().time, *instant_in("2012-05-14T04:45:00Z"));
  EXPECT_DOUBLE_EQ(*series.readings.back().si, cubic_feet_per_second(60).si());
  EXPECT_EQ(series.readings.front().marks, Marks{Mark::Approved});
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(UsgsWaterml1, OfAReservoirsElevationIsNoStage) {
  const auto answer = answer_of(recorded("usgs-waterml1/site_08054500_multiple_methods.xml"));
  EXPECT_THAT(answer.series, IsEmpty());
  EXPECT_THAT(answer.notes, ElementsAre("parameter 00062: 576 rows left out: it is not used here"));
}

// The same file with the code of stage in place of that of elevation, for its two sensors.
TEST(UsgsWaterml1, WithTwoSensorsGivesTwoSeries) {
  const auto answer =
      answer_of(replaced(recorded("usgs-waterml1/site_08054500_multiple_methods.xml"), ">00062<", ">00065<"));
  ASSERT_THAT(answer.series, SizeIs(2));
  const auto &first = answer.series[0], &radar = answer.series[1];
  EXPECT_EQ(first.series_id, "USGS:08054500:00065:00011:1");
  EXPECT_EQ(first.sensor, "");
  ASSERT_THAT(first.readings, SizeIs(288));
  EXPECT_DOUBLE_EQ(*first.readings[39].si, stage_feet(551.41).si());
  EXPECT_EQ(first.readings[40].time, *instant_in("2015-12-16T10:00:00-06:00"));
  EXPECT_FALSE(first.readings[40].si.has_value());
  EXPECT_EQ(first.readings[40].marks, (Marks{Mark::Provisional, Mark::Unavailable}));
  EXPECT_EQ(std::count_if(first.readings.begin(), first.readings.end(), [](const Reading& r) { return !r.si; }), 248);
  EXPECT_EQ(radar.sensor, "RADAR");
  ASSERT_THAT(radar.readings, SizeIs(288));
  EXPECT_DOUBLE_EQ(*radar.readings.back().si, stage_feet(550.76).si());
}

TEST(UsgsWaterml1, WithoutValuesIsAnEmptySeriesOfDays) {
  const auto answer = answer_of(recorded("usgs-waterml1/site_01117800_daily_empty.xml"));
  ASSERT_THAT(answer.series, SizeIs(1));
  EXPECT_EQ(answer.series[0].series_id, "USGS:01117800:00060:00003:1");
  EXPECT_TRUE(answer.series[0].daily);
  EXPECT_THAT(answer.series[0].readings, IsEmpty());
}

TEST(UsgsWaterml1, WithAQueryOnlyHoldsNothing) {
  EXPECT_THAT(answer_of(R"(<a:timeSeriesResponse xmlns:a="http://www.cuahsi.org/waterML/1.1/"><a:queryInfo/>)"
                        "</a:timeSeriesResponse>")
                  .series,
              IsEmpty());
}

TEST(UsgsWaterml1, TrimsTheUnitsTextAndReadsAnEmptyOneByTheParameter) {
  for (const std::string unit : {"\n cfs \n", "ft3/s", ""})
    EXPECT_DOUBLE_EQ(*answer_of(entry(values(kRow), unit)).series.at(0).readings.at(0).si, 2.8316846592) << unit;
  EXPECT_THAT(answer_of(entry(values(kRow), "")).notes, ElementsAre(HasSubstr("no unit is written; read as ft3/s")));
  const auto odd = answer_of(entry(values(kRow), "acre-ft"));
  EXPECT_THAT(odd.series, IsEmpty());
  EXPECT_THAT(odd.doubts,
              ElementsAre(HasSubstr("1 row left out: the unit \"acre-ft\" is not known (first at line 1, ")));
}

TEST(UsgsWaterml1, OfDaysHasDateLabels) {
  const auto answer =
      answer_of(entry(values(R"(<value dateTime="2017-04-23T00:00:00.000">3</value>)"), "cfs", "00003"));
  ASSERT_THAT(answer.series, SizeIs(1));
  EXPECT_TRUE(answer.series[0].daily);
  EXPECT_EQ(answer.series[0].readings.at(0).time, *instant_in("2017-04-23T00:00:00Z"));
}

TEST(UsgsWaterml1, LeavesOutRowsThatCantBeReadAndSaysWhere) {
  const auto answer = answer_of(entry(values(
      kRow +
      R"(<value dateTime="1881-00-00T00:00:00-06:00">1</value><value>2</value>)"
      R"(<value dateTime="2026-05-13T13:00:00-06:00" dateTime="2026-05-13T14:00:00-06:00">3</value>)"
      R"(<value dateTime="2026-05-13T13:00:00-06:00">1e999</value><value dateTime="2026-05-13T14:00:00-06:00">NaN</value>)"
      R"(<value dateTime="2026-05-13T15:00:00-06:00">-12</value><value dateTime="2026-05-13T16:00:00-06:00"/>)")));
  ASSERT_THAT(answer.series.at(0).readings, SizeIs(3));
  EXPECT_EQ(answer.series[0].readings[0].marks, (Marks{Mark::Provisional, Mark::Estimated}));
  EXPECT_DOUBLE_EQ(*answer.series[0].readings[1].si, cubic_feet_per_second(-12).si());
  EXPECT_FALSE(answer.series[0].readings[2].si.has_value());
  EXPECT_THAT(answer.doubts, SizeIs(5));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("1881-00-00")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("more than one dateTime")));
}

TEST(UsgsWaterml1, IsToldWhereverItWasCut) {
  const std::string whole = recorded("usgs-waterml1/site_01117800_daily_empty.xml");
  const auto end = whole.rfind('>');
  for (std::size_t length = 1; length <= end; ++length) {
    const std::string failure = failure_of(whole.substr(0, length));
    ASSERT_NE(failure, "no failure") << length;
    if (length > 20) {
      ASSERT_THAT(failure, HasSubstr("cut short")) << length;
    }
  }
}

TEST(UsgsWaterml1, IsToldWhenItIsSomethingElse) {
  EXPECT_EQ(failure_of(" \n"), "a.xml: empty; ask the service again");
  EXPECT_THAT(failure_of("<!DOCTYPE HTML><p>"), HasSubstr("a web page, not XML (it begins \"<!DOCTYPE HTML><p>\")"));
  EXPECT_THAT(failure_of("{}"), HasSubstr("other text, not XML"));
  EXPECT_THAT(failure_of("<a/>"), HasSubstr("the root element is \"a\""));
  EXPECT_THAT(failure_of(entry("") + "\n" + entry("")), HasSubstr("line 2, column 2: a second root element"));
  EXPECT_THAT(failure_of(entry("") + "and so on"), HasSubstr("text outside the root element"));
  EXPECT_THAT(failure_of("<a><b></a>"), HasSubstr("a.xml: line 1, column "));
  EXPECT_THAT(
      failure_of(
          R"(<timeSeriesResponse xmlns="http://www.cuahsi.org/waterML/1.1/"><timeSeries/></timeSeriesResponse>)"),
      HasSubstr("a timeSeries without a siteCode"));
}

TEST(UsgsWaterml1, NeverReadsPastBytesThatAreNoText) {
  const std::string whole = entry(values(kRow));
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string bytes = whole;
    bytes[at] = '\xff';
    ASSERT_NE(failure_of(bytes), "no failure") << at;
    bytes[at] = '\0';
    ASSERT_NE(failure_of(bytes), "no failure") << at;
  }
}

TEST(UsgsWaterml1, IsReadInTheEncodingThatItDeclares) {
  const std::string latin =
      R"(<?xml version="1.0" encoding="ISO-8859-1"?>)" + replaced(entry(values(kRow)), "Lantern", "Rivi\xE8re");
  EXPECT_EQ(answer_of(latin).series.at(0).station_name, "Rivi\xC3\xA8re");
}

TEST(UsgsWaterml1, ExpandsNoEntities) {
  const std::string bomb =
      R"(<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY x SYSTEM "file:///etc/passwd">]>)";
  const auto answer = answer_of(bomb + replaced(entry(values(kRow)), "Lantern", "&b;&x;"));
  EXPECT_EQ(answer.series.at(0).station_name, "&b;&x;");
}

TEST(UsgsWaterml1, IsReadBesideElementsNestedAHundredThousandDeep) {
  std::string deep, back;
  for (int i = 0; i < 100000; ++i) deep += "<a>", back += "</a>";
  EXPECT_THAT(answer_of(entry(values(kRow) + deep + back)).series.at(0).readings, SizeIs(1));
  EXPECT_THAT(failure_of(entry(values(kRow) + deep)), HasSubstr("a.xml: line 1, column "));
}

// Several pieces long, two blocks: a row a minute, each on a line of its own.
TEST(UsgsWaterml1, OfManyRowsNamesThePlaceOfEach) {
  const auto rows = [](std::size_t from, std::size_t bad) {
    std::string out;
    for (std::size_t i = from; i < from + 1000; ++i)
      out += fmt::format("\n<value qualifiers=\"A\" dateTime=\"2026-05-13T{:02}:{:02}:00Z\">{}</value>", i / 60, i % 60,
                         i == bad ? "much" : std::to_string(i));
    return out;
  };
  const auto answer = answer_of(entry(values(rows(0, 700)) + "<!-- between -->\n" + values(rows(200, 1101))));
  ASSERT_THAT(answer.series, SizeIs(1));  // the second block repeats 800 rows of the first's
  const auto& readings = answer.series[0].readings;
  ASSERT_THAT(readings, SizeIs(1199));
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const double minute = static_cast<double>(i < 1101 ? i : i + 1);
    ASSERT_EQ(readings[i].time, *instant_in("2026-05-13T00:00:00Z") + std::chrono::minutes{i < 1101 ? i : i + 1});
    ASSERT_DOUBLE_EQ(*readings[i].si, cubic_feet_per_second(minute).si());
  }
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("2 rows left out: the value \"much\" is not a finite number (first at "
                                                   "line 702, column 2)")));
  EXPECT_THAT(answer_of(entry(values(rows(0, 1000)) + "\n" + values(rows(200, 1101)))).doubts,
              ElementsAre(HasSubstr("(first at line 1904, column 2)")));
}

// What must not be taken for rows one behind the other, by their text.
TEST(UsgsWaterml1, TakesNoRowsFromCommentsAndKeepsWhatStandsBetweenRows) {
  const auto row = [](int hour, const std::string& value) {
    return fmt::format(R"(<value dateTime="2026-05-13T{:02}:00:00Z">{}</value>)", hour, value);
  };
  const auto count = [](const std::string& rows) {
    const auto answer = answer_of(entry(values(rows)));
    return answer.series.at(0).readings.size() + 100 * answer.notes.size();
  };
  const std::string one = row(1, "1"), two = row(2, "2"), three = row(3, "3");
  EXPECT_EQ(count(one + two + three), 3);
  EXPECT_EQ(count(R"(<value dateTime="2026-05-13T00:00:00Z"/>)" + one + two + three), 4);
  EXPECT_EQ(count("<!--" + one + two + "-->" + three), 1);
  EXPECT_EQ(count(one + "<!--" + two + "-->" + three), 2);
  EXPECT_EQ(count(one + "<!--" + two + three + "-->"), 1);
  EXPECT_EQ(count(row(1, "<!-- </value> -->1") + two + three), 3);
  EXPECT_EQ(count(row(1, "<![CDATA[</value>]]>") + two + three), 102);
  EXPECT_EQ(count(one + "<value>" + two + "</value>" + three), 102);  // of rows in rows the outer has no dateTime
  EXPECT_EQ(count(one + "text" + two + "<qualifier/>" + three), 3);
  const auto answer = answer_of(entry("<values>" + one + R"(<method methodID="9"/>)" + two + "</values>"));
  EXPECT_EQ(answer.series.at(0).series_id, "USGS:00000001:00060:00000:9");
  EXPECT_THAT(answer_of(entry("<!--" + values(one + two) + "-->")).series, IsEmpty());
  EXPECT_THAT(failure_of(entry(values(one + two + "<!DOCTYPE a>" + three))), HasSubstr("not XML"));
  EXPECT_THAT(failure_of(entry(values(one + two + "</values>" + three))), HasSubstr("a.xml: line 1, column "));
}

}  // namespace
}  // namespace floatwright
