// Answers recorded from the services (fixtures/recorded): what each holds, counted and read off the files by hand and
// with a separate script. Values as sent, in the service's own unit.
#include <gmock/gmock.h>

#include <algorithm>
#include <ostream>

#include "adapters/in/gauges/payload.hpp"
#include "adapters/in/calendar/written_time.hpp"
#include "engine/units/unit.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

struct Expected {
  std::string file, series_id, station;
  Variable variable;
  bool daily;
  std::size_t rows, missing;
  std::string first_time;
  double first;
  std::string last_time;  // of the last row with a value
  double last;

  friend void PrintTo(const Expected& e, std::ostream* out) { *out << e.file << " " << e.series_id; }
};

double si(Variable variable, double as_sent) {
  if (variable == Variable::Flow) return cubic_feet_per_second(as_sent).si();
  if (variable == Variable::GaugeHeight) return stage_feet(as_sent).si();
  return as_sent;
}

const std::string kIce = "usgs-legacy/iv_01542500_ice_flags_nodata_2019-01.json";
const std::string kMixed = "usgs-legacy/iv_01541000_01570500_mixed_freq_temp_multimethod_emptyblocks_2018-06.json";
const std::string kAutumn = "usgs-legacy/iv_01541000_dst_end_2018-11.json";
const std::string kTug = "usgs-legacy/iv_03213700_discharge_15min_2016-09_approved.json";
const std::string kOld = "usgs-legacy/dv_01541200_latest_only_stale_1961_temperature.json";
const std::string kTwice = "usgs-legacy/dv_03107698_duplicate_row_and_Dis_flag.json";
const std::string kTwoSeries = "usgs-water-data/v1_daily_02196000_page1_two_series_unsorted_next_link.json";
constexpr auto kQ = Variable::Flow;
constexpr auto kH = Variable::GaugeHeight;
constexpr auto kT = Variable::WaterTemperature;

// clang-format off
const std::vector<Expected> kTable{
    {kIce, "USGS:01542500:00060:00000:121832", "usgs:01542500", kQ, false, 438, 39, "2019-01-24T05:00:00Z", 2230, "2019-01-28T19:00:00Z", 3760},
    {kMixed, "USGS:01541000:00060:00000:121813", "usgs:01541000", kQ, false, 96, 0, "2018-06-01T04:00:00Z", 2540, "2018-06-02T03:45:00Z", 1090},
    {kMixed, "USGS:01541000:00065:00000:121814", "usgs:01541000", kH, false, 96, 0, "2018-06-01T04:00:00Z", 8.25, "2018-06-02T03:45:00Z", 6.67},
    {kMixed, "USGS:01570500:00010:00000:122073", "usgs:01570500", kT, false, 96, 0, "2018-06-01T04:00:00Z", 22.1, "2018-06-02T03:45:00Z", 24.4},
    {kMixed, "USGS:01570500:00060:00000:122065", "usgs:01570500", kQ, false, 48, 0, "2018-06-01T04:00:00Z", 42200, "2018-06-02T03:30:00Z", 36900},
    {kMixed, "USGS:01570500:00065:00000:122066", "usgs:01570500", kH, false, 48, 0, "2018-06-01T04:00:00Z", 5.25, "2018-06-02T03:30:00Z", 5.02},
    {kAutumn, "USGS:01541000:00060:00000:121813", "usgs:01541000", kQ, false, 292, 0, "2018-11-03T04:00:00Z", 1000, "2018-11-06T04:45:00Z", 1110},
    {kTug, "USGS:03213700:00060:00000:160874", "usgs:03213700", kQ, false, 192, 0, "2016-09-01T04:00:00Z", 366, "2016-09-03T03:45:00Z", 276},
    {kOld, "USGS:01541200:00010:00011:118850", "usgs:01541200", kT, true, 1, 0, "1961-09-29T00:00:00Z", 11.7, "1961-09-29T00:00:00Z", 11.7},
    {kOld, "USGS:01541200:00060:00003:118849", "usgs:01541200", kQ, true, 1, 0, "2019-04-14T00:00:00Z", 717, "2019-04-14T00:00:00Z", 717},
    {kTwice, "USGS:03107698:00060:00003:120332", "usgs:03107698", kQ, true, 7, 4, "2017-04-23T00:00:00Z", 6.82, "2017-04-25T00:00:00Z", 5.62},
    {kTwoSeries, "0df18b246e8f48ec8e6547a92070e94a", "usgs:02196000", kQ, true, 4, 0, "1999-12-30T00:00:00Z", 20.0, "2000-01-08T00:00:00Z", 25.0},
    {kTwoSeries, "4d186669708e4dc18f84d271efb953a1", "usgs:02196000", kQ, true, 1, 0, "2000-01-07T00:00:00Z", 24.0, "2000-01-07T00:00:00Z", 24.0},
    {"usgs-water-data/v1_continuous_07374000_trimmed_to_5.json", "31494a236cc7437bbfd6908e83fb5c07", "usgs:07374000", kQ, false, 5, 0, "2022-12-30T00:00:00Z", 402000, "2022-12-30T01:00:00Z", 401000},
    {"usgs-water-data/v0_continuous.json", "b36569a0067443ac9425e850a3ac7baa", "usgs:06904500", kH, false, 2, 0, "2025-01-01T00:00:00Z", 1.76, "2025-01-01T00:15:00Z", 1.76},
    {"usgs-water-data/v0_latest-continuous.json", "b36569a0067443ac9425e850a3ac7baa", "usgs:06904500", kH, false, 1, 0, "2026-08-07T18:45:00Z", 1.59, "2026-08-07T18:45:00Z", 1.59},
    {"usgs-water-data/v0_latest-continuous.json", "627c17455f9e4a4286e1d75dde4d8470", "usgs:06904500", kQ, false, 1, 0, "2026-08-07T18:45:00Z", 535, "2026-08-07T18:45:00Z", 535},
    {"usgs-water-data/v0_daily.json", "90a0ea0b6d99431e9f3d91da1aa49564", "usgs:05427718", kQ, true, 2, 0, "2025-12-26T00:00:00Z", 20.2, "2026-03-19T00:00:00Z", 27.1},
};
const std::vector<std::pair<std::string, std::size_t>> kSeriesCounts{
    {kIce, 1}, {kMixed, 6}, {kAutumn, 1}, {kTug, 1}, {kOld, 2}, {kTwice, 1}, {kTwoSeries, 2},
    {"usgs-legacy/iv_01541200_no_timeseries_200.json", 0},
    {"usgs-water-data/v0_continuous.json", 1}, {"usgs-water-data/v0_latest-continuous.json", 2},
    {"usgs-water-data/v0_daily.json", 1}, {"usgs-water-data/v0_latest-daily.json", 0},
    {"usgs-water-data/v1_continuous_07374000_trimmed_to_5.json", 1},
    {"usgs-waterml1/WaterML1Example_01491000_no_dst_site_2012-05.xml", 1},
    {"usgs-waterml1/site_08054500_multiple_methods.xml", 0}, {"usgs-waterml1/site_01117800_daily_empty.xml", 1},
    {"waterml2/WaterML2Example_USGS_dv_01646500_2014.xml", 1},
};
// clang-format on

GaugeAnswer answer_of(const std::string& file) {
  return answer_or_told(read_payload(recorded(file), file));
}

class RecordedPayload : public testing::TestWithParam<Expected> {};

TEST_P(RecordedPayload, HoldsWhatWasCountedByHand) {
  const Expected& expected = GetParam();
  const GaugeAnswer answer = answer_of(expected.file);
  const auto series = std::find_if(answer.series.begin(), answer.series.end(),
                                   [&](const GaugeSeries& s) { return s.series_id == expected.series_id; });
  ASSERT_NE(series, answer.series.end());
  EXPECT_EQ(series->station, expected.station);
  EXPECT_EQ(series->variable, expected.variable);
  EXPECT_EQ(series->daily, expected.daily);
  ASSERT_EQ(series->readings.size(), expected.rows);
  EXPECT_EQ(std::count_if(series->readings.begin(), series->readings.end(), [](const Reading& r) { return !r.si; }),
            static_cast<std::ptrdiff_t>(expected.missing));
  EXPECT_EQ(series->readings.front().time, *instant_in(expected.first_time));
  EXPECT_DOUBLE_EQ(series->readings.front().si.value(), si(expected.variable, expected.first));
  const auto last = std::find_if(series->readings.rbegin(), series->readings.rend(),
                                 [](const Reading& r) { return r.si.has_value(); });
  EXPECT_EQ(last->time, *instant_in(expected.last_time));
  EXPECT_DOUBLE_EQ(last->si.value(), si(expected.variable, expected.last));
}

INSTANTIATE_TEST_SUITE_P(Usgs, RecordedPayload, testing::ValuesIn(kTable),
                         [](const auto& row) { return "Row" + std::to_string(row.index); });

TEST(RecordedPayloads, HoldAsManySeriesAsCounted) {
  for (const auto& [file, count] : kSeriesCounts) EXPECT_EQ(answer_of(file).series.size(), count) << file;
}

TEST(RecordedPayloads, AreSortedWithOneRowAnInstant) {
  for (const auto& [file, count] : kSeriesCounts)
    for (const GaugeSeries& series : answer_of(file).series)
      for (std::size_t i = 1; i < series.readings.size(); ++i)
        EXPECT_LT(series.readings[i - 1].time, series.readings[i].time) << file << " " << series.series_id;
}

TEST(RecordedPayloads, TheRepeatedHourOfAutumnIsEvenlySpacedInUtc) {
  const GaugeSeries series = answer_of(kAutumn).series.at(0);
  for (std::size_t i = 1; i < series.readings.size(); ++i)
    EXPECT_EQ(series.readings[i].time - series.readings[i - 1].time, std::chrono::minutes{15}) << i;
}

TEST(RecordedPayloads, IceRowsHaveNoValueAndSayIce) {
  const GaugeSeries series = answer_of(kIce).series.at(0);
  const Reading& first_ice =
      *std::find_if(series.readings.begin(), series.readings.end(), [](const Reading& r) { return !r.si.has_value(); });
  EXPECT_EQ(first_ice.time, *instant_in("2019-01-28T14:15:00-05:00"));
  EXPECT_EQ(first_ice.marks, (Marks{Mark::Provisional, Mark::Ice}));
  EXPECT_THAT(series.unknown_codes, IsEmpty());
}

TEST(RecordedPayloads, TheSensorWithoutRowsIsThereBesideTheOneOnThePier) {
  const GaugeAnswer answer = answer_of(kMixed);
  const auto of = [&](const std::string& id) {
    return *std::find_if(answer.series.begin(), answer.series.end(), [&](const auto& s) { return s.series_id == id; });
  };
  EXPECT_THAT(of("USGS:01570500:00010:00000:122067").readings, IsEmpty());
  EXPECT_EQ(of("USGS:01570500:00010:00000:122073").sensor, "WALNUT ST PIER");
  EXPECT_THAT(answer.notes, Contains("parameter 00095: 96 rows left out: it is not used here"));
}

TEST(RecordedPayloads, ARowSentTwiceIsToldAndKeptOnce) {
  EXPECT_THAT(answer_of(kTwice).notes, Contains("series USGS:03107698:00060:00003:120332: 1 row sent twice, dropped"));
}

TEST(RecordedPayloads, DailyValuesAreToldToBeDates) {
  EXPECT_THAT(answer_of(kOld).notes, Contains(HasSubstr("the date of a local day")));
}

TEST(RecordedPayloads, APageWithANextOneIsToldNotToBeTheWhole) {
  EXPECT_THAT(answer_of(kTwoSeries).notes, Contains("the answer goes on at a next page; 5 rows is not the whole"));
}

TEST(RecordedPayloads, OfOtherCollectionsAreRefusedByName) {
  for (const std::string name : {"peaks", "field-measurements", "time-series-metadata", "monitoring-locations"}) {
    const std::string file = "usgs-water-data/v0_" + name + ".json";
    const auto answer = read_payload(recorded(file), file);
    ASSERT_FALSE(answer.has_value()) << file;
    EXPECT_THAT(answer.error().what, HasSubstr("the features are no readings")) << file;
  }
}

TEST(RecordedPayloads, TheRateLimitIsToldInTheServicesWords) {
  const auto answer = read_payload(recorded("usgs-water-data/error_429_OVER_RATE_LIMIT.json"), "answer.json");
  ASSERT_FALSE(answer.has_value());
  EXPECT_THAT(answer.error().what, HasSubstr("answer.json: the service answered with an error, OVER_RATE_LIMIT"));
}

}  // namespace
}  // namespace floatwright
