// Files made up as lodges and loggers write them. Instants of the hours when clocks change are those of Python's
// zoneinfo on the same zone database (package python3).
#include "adapters/in/gauges/csv_gauge/read_csv_gauge.hpp"

#include <gmock/gmock.h>

#include "adapters/in/calendar/clock_text.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

CsvGauge ford() {
  CsvGauge out;
  out.station = "csv:ford";
  out.time = {.name = "Time", .place = 0};
  out.time_zone = "America/Denver";
  out.columns = {{.column = {.name = "Stage", .place = 0}, .quantity = Variable::GaugeHeight, .unit = "ft"}};
  return out;
}

GaugeAnswer answer_of(const std::string& bytes, const CsvGauge& gauge = ford()) {
  return answer_or_told(read_csv_gauge(bytes, "ford.csv", gauge));
}
std::string failure_of(const std::string& bytes, const CsvGauge& gauge = ford()) {
  const auto answer = read_csv_gauge(bytes, "ford.csv", gauge);
  return answer ? "no failure" : answer.error().what;
}

std::vector<Instant> instants(std::initializer_list<const char*> texts) {
  std::vector<Instant> out;
  for (const char* text : texts) out.push_back(instant_in(text).value());
  return out;
}
std::vector<Instant> times_of(const GaugeSeries& series) {
  std::vector<Instant> out;
  for (const Reading& row : series.readings) out.push_back(row.time);
  return out;
}

TEST(CsvGauge, OfALodgesStaffIsReadByTheNamesOfItsColumns) {
  const auto answer = answer_of(
      "\xEF\xBB\xBFWho, Time ,Stage\r\n# read from the bank\r\n\"Wren, guide\",2026-05-13 07:30,2.5\r\n"
      "Marten,2026-05-13T19:30:00-06:00,+2.75\r\nWren,2026-05-14T07:30,\r\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  const GaugeSeries& series = answer.series[0];
  EXPECT_EQ(series.station, "csv:ford");
  EXPECT_EQ(series.series_id, "stage:Stage");
  EXPECT_EQ(series.source, "ford.csv");
  EXPECT_EQ(times_of(series), instants({"2026-05-13T13:30Z", "2026-05-14T01:30Z", "2026-05-14T13:30Z"}));
  EXPECT_DOUBLE_EQ(*series.readings[0].si, stage_feet(2.5).si());
  EXPECT_DOUBLE_EQ(*series.readings[1].si, stage_feet(2.75).si());
  EXPECT_FALSE(series.readings[2].si.has_value());
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(CsvGauge, OfALoggerIsReadByPlacesWithSemicolonsAndCommas) {
  CsvGauge logger = ford();
  logger.time = {.name = {}, .place = 2};
  logger.time_format = "%d.%m.%y %I:%M:%S %p";
  logger.time_zone = "Etc/GMT+7";
  logger.separator = ';';
  logger.decimal_comma = true;
  logger.skip_lines = 2;
  logger.missing = {"-100", "Logged"};
  logger.columns = {{.column = {.name = {}, .place = 3},
                     .quantity = Variable::WaterTemperature,
                     .unit = "\u00b0"
                             "F"},
                    {.column = {.name = {}, .place = 4}, .quantity = Variable::Flow, .unit = "m3/s"}};
  const auto answer = answer_of(
      "Plot title\n\"#\";\"Date\";\"T\xB0\"\n1;13.05.26 07:30:00 PM;50,0;12,5\n2;13.05.26 07:45:00 PM;-100,0;Logged\n"
      "3;13.05.26 08:00:00 PM;51,8\n",
      logger);
  ASSERT_THAT(answer.series, SizeIs(2));
  EXPECT_EQ(answer.series[0].series_id, "water_temperature:column 3");
  EXPECT_EQ(times_of(answer.series[0]), instants({"2026-05-14T02:30Z", "2026-05-14T02:45Z", "2026-05-14T03:00Z"}));
  EXPECT_NEAR(*answer.series[0].readings[0].si, 10.0, 1e-12);
  EXPECT_FALSE(answer.series[0].readings[1].si.has_value());
  EXPECT_NEAR(*answer.series[0].readings[2].si, 11.0, 1e-12);
  ASSERT_THAT(answer.series[1].readings, SizeIs(2));
  EXPECT_EQ(*answer.series[1].readings[0].si, 12.5);
  EXPECT_FALSE(answer.series[1].readings[1].si.has_value());
  EXPECT_THAT(answer.notes, IsEmpty());
}

TEST(CsvGauge, TellsTheHourThatTheClockShowsTwiceByTheOrderOfRows) {
  const auto answer = answer_of(
      "Time,Stage\n2026-11-01 01:00,1\n2026-11-01 01:30,2\n2026-11-01 01:00,3\n2026-11-01 01:30,4\n2026-11-01 "
      "02:00,5\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  EXPECT_EQ(times_of(answer.series[0]), instants({"2026-11-01T07:00Z", "2026-11-01T07:30Z", "2026-11-01T08:00Z",
                                                  "2026-11-01T08:30Z", "2026-11-01T09:00Z"}));
  EXPECT_THAT(answer.doubts,
              ElementsAre("csv:ford: 4 rows in an hour that the clock showed twice; told apart by their order"));
}

TEST(CsvGauge, LeavesOutTheHourThatTheClockNeverShowed) {
  const auto answer = answer_of("Time,Stage\n2026-03-08 01:30,1\n2026-03-08 02:30,2\n2026-03-08 03:00,3\n");
  EXPECT_EQ(times_of(answer.series.at(0)), instants({"2026-03-08T08:30Z", "2026-03-08T09:00Z"}));
  EXPECT_THAT(answer.doubts,
              ElementsAre(HasSubstr("the clock of America/Denver left out when it was put on (first at line 3)")));
}

TEST(CsvGauge, OfDatesHoldsDays) {
  const auto answer = answer_of("Time,Stage\n2026-05-13,1\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  EXPECT_TRUE(answer.series[0].daily);
  CsvGauge american = ford();
  american.time_format = "%m/%d/%Y";
  const auto days = answer_of("Time,Stage\n5/13/2026,1\n", american);
  EXPECT_TRUE(days.series.at(0).daily);
  EXPECT_EQ(times_of(days.series[0]), instants({"2026-05-13T00:00Z"}));
}

TEST(CsvGauge, DeclaredDailyHoldsDaysWhateverHourStandsBesideTheDate) {
  CsvGauge daily = ford();
  daily.daily = true;
  const auto answer = answer_of("Time,Stage\n2026-05-13 23:59,1\n2026-05-15T00:00:00-06:00,2\n", daily);
  EXPECT_TRUE(answer.series.at(0).daily);
  EXPECT_EQ(times_of(answer.series[0]), instants({"2026-05-13T00:00Z", "2026-05-15T00:00Z"}));
}

TEST(CsvGauge, LeavesOutWhatCantBeReadAndSaysWhere) {
  const auto answer = answer_of(
      "Time,Stage\n1881-00-00 00:00,1\n2026-05-13 07:30,n/a\n2026-05-13 07:45,-9999\n2026-05-13 08:00,1e999\n"
      "2026-05-13 08:15,\"1,234\"\n2026-05-13 08:30,-0.5\n2026-05-13 08:45,\"1\"2\n");
  ASSERT_THAT(answer.series, SizeIs(1));
  ASSERT_THAT(answer.series[0].readings, SizeIs(1));
  EXPECT_DOUBLE_EQ(*answer.series[0].readings[0].si, stage_feet(-0.5).si());
  EXPECT_THAT(answer.doubts,
              Contains(HasSubstr("-9999 looks like a code for no value; declare it in \"missing\" (first at line 4)")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("\"1881-00-00 00:00\" (first at line 2)")));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("text follows the closing quote")));
  EXPECT_THAT(answer.doubts, SizeIs(6));
  CsvGauge no_zone = ford();
  no_zone.time_zone.clear();
  EXPECT_THAT(answer_of("Time,Stage\n2026-05-13 07:30,1\n", no_zone).doubts,
              ElementsAre(HasSubstr("no time_zone is declared")));
}

TEST(CsvGauge, ThatCantBeReadAtAllIsTold) {
  EXPECT_EQ(failure_of("\n"), "ford.csv: empty");
  EXPECT_EQ(failure_of("When,Stage\n"), "ford.csv: line 1: no column \"Time\"; there are When, Stage");
  EXPECT_THAT(failure_of(std::string("T\0i\0", 4)), HasSubstr("line 1, column 2: a zero byte"));
  CsvGauge nowhere = ford();
  nowhere.time_zone = "America/Lantern";
  EXPECT_THAT(failure_of("Time,Stage\n", nowhere), HasSubstr("no time zone \"America/Lantern\""));
  CsvGauge skipped = ford();
  skipped.skip_lines = 5;
  EXPECT_THAT(failure_of("Time,Stage\n", skipped), HasSubstr("no line with the names of columns"));
}

TEST(ClockText, UsesAllOfTheTextAndRefusesWhatNeverWas) {
  EXPECT_EQ(written_time_by("%d.%m.%Y %H:%M", "13.05.2026 19:30")->local, *instant_in("2026-05-13T19:30Z"));
  EXPECT_EQ(written_time_by("%Y%m%d%H%M%z", "202605131930-0600")->east, Period{std::chrono::hours{-6}});
  for (const char* text :
       {"31.02.2026 10:00", "13.05.2026 19:30x", "13.05.2026", "", "13.13.2026 10:00", "13.05.1492 10:00"})
    EXPECT_FALSE(written_time_by("%d.%m.%Y %H:%M", text).has_value()) << text;
}

TEST(ClockText, KnowsAFormThatLosesItsTimes) {
  for (const char* form : {"%d.%m.%Y %H:%M", "%m/%d/%y %I:%M %p", "%F", "%FT%T", "%b %d %Y %R"})
    EXPECT_TRUE(gives_back_its_times(form)) << form;
  for (const char* form : {"%d.%M.%Y %H:%M", "%H:%M", "", "Y-m-d", "%d.%m.%Y %I:%M"})
    EXPECT_FALSE(gives_back_its_times(form)) << form;
}

}  // namespace
}  // namespace floatwright
