// Hub'Eau (France), NVE (Norway) and FOEN (Switzerland): recorded answers (fixtures/recorded) read off by hand, and
// what the services may send besides.
#include <gmock/gmock.h>

#include "tests/adapters/in/gauges/holds.hpp"

namespace floatwright {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr auto kQ = Variable::Flow;
constexpr auto kH = Variable::GaugeHeight;
constexpr auto kT = Variable::WaterTemperature;

TEST(Hubeau, RecordedStageIsInMetresAndThePageGoesOn) {
  const auto answer = read_or_tell(recorded("hubeau/EXCERPT_observations_tr_v2_B720000001_2026-09-23.json"), "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  expect_holds(answer, {"hubeau:B720000001", "H", kH, false, 1, 0, "2026-09-23T19:30:00Z", 0.491,
                        "2026-09-23T19:30:00Z", 0.491});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional}));
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("the answer goes on at a next page")));
}

std::string hubeau(const std::string& rows) { return R"({"api_version":"2.0.1","next":null,"data":[)" + rows + "]}"; }
std::string row_of(const std::string& station, const std::string& minute, const std::string& litres,
                   const std::string& codes = R"("code_statut":16,"code_qualification_obs":20,"code_methode_obs":8)") {
  return R"({"code_station":)" + station + R"(,"grandeur_hydro":"Q","date_obs":"2026-09-23T19:)" + minute +
         R"(:00Z","resultat_obs":)" + litres + "," + codes + "}";
}

TEST(Hubeau, RowsOfASiteAreLeftOutAndCodesAreMarks) {
  const auto answer = read_or_tell(
      hubeau(row_of("null", "00", "4880") + "," + row_of("\"B1\"", "00", "4880") + "," +
             row_of("\"B1\"", "05", "null") + "," +
             row_of("\"B1\"", "10", "-12", R"("code_statut":4,"code_qualification_obs":12,"code_methode_obs":12)")),
      "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  expect_holds(answer,
               {"hubeau:B1", "Q", kQ, false, 3, 1, "2026-09-23T19:00:00Z", 4.88, "2026-09-23T19:10:00Z", -0.012});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Approved}));
  EXPECT_EQ(answer.series.at(0).readings.at(2).marks, (Marks{Mark::Provisional, Mark::Estimated, Mark::Unknown}));
  EXPECT_THAT(answer.notes, Contains(HasSubstr("1 row left out: it is not used here")));
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("qualification 12")));
}

// The values of github.com/BRGM/hubeau issue 138: 4880 l/s one day, 4 the next.
TEST(Hubeau, AFlowThatFallsAThousandfoldIsADoubt) {
  const auto answer =
      read_or_tell(hubeau(row_of("\"B1\"", "00", "4880") + "," + row_of("\"B1\"", "05", "4")), "a.json");
  EXPECT_THAT(answer.doubts, ElementsAre(HasSubstr("m3/s for l/s")));
}

TEST(Nve, RecordedDaysAreKeptUnderTheirDate) {
  const auto answer = read_or_tell(recorded("nve/nve_hydapi_observations_100.1.0_daily_2024.json"), "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  expect_holds(answer, {"nve:100.1.0", "1001:1:Mean:day", kQ, true, 4, 0, "2024-01-01T00:00:00Z", 2.291431,
                        "2024-01-04T00:00:00Z", 1.675695});
  EXPECT_EQ(answer.series.at(0).station_name, "Valldøla v/Alstad");
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Approved}));
  EXPECT_EQ(answer.series.at(0).readings.at(2).marks, (Marks{Mark::Approved, Mark::Estimated}));
}

TEST(Nve, InstantsAreReadWhateverTheOrderOfKeys) {
  const auto answer = read_or_tell(
      R"({"currentLink":"https://hydapi.nve.no/api/v1/Observations?ResolutionTime=0","data":[)"
      R"({"observations":[{"quality":1,"value":4.5,"time":"2024-01-01T00:10:00Z"},{"time":"2024-01-01T00:20:00Z","value":null,"quality":9}],)"
      R"("unit":"°C","parameter":"1003","method":"Instantaneous","serieVersionNo":2,"stationId":"2.32.0"},)"
      R"({"stationId":"2.32.0","parameter":17,"unit":"°C","observations":[{"time":"2024-01-01T00:10:00Z","value":-8}]},)"
      R"({"stationId":"2.32.0","parameter":1000,"unit":"furlong","observations":[{"time":"2024-01-01T00:10:00Z","value":1}]}]})",
      "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  expect_holds(answer, {"nve:2.32.0", "1003:2:Instantaneous", kT, false, 2, 1, "2024-01-01T00:10:00Z", 4.5,
                        "2024-01-01T00:10:00Z", 4.5});
  EXPECT_EQ(answer.series.at(0).readings.at(0).marks, (Marks{Mark::Provisional}));
  EXPECT_EQ(answer.series.at(0).readings.at(1).marks, (Marks{Mark::Unknown}));
  EXPECT_THAT(answer.notes, Contains("parameter 17: 1 row left out: it is not used here"));
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("the unit \"furlong\" is not known")));
}

TEST(Foen, RecordedColumnsAreMatchedWithTheirTimes) {
  const auto answer = read_or_tell(recorded("foen/foen_2135_aare_bern_flow_height_temp_2026-09-01.json"), "a.json");
  EXPECT_THAT(answer.series, SizeIs(3));
  expect_holds(
      answer, {"foen:2135", "flow", kQ, false, 145, 0, "2026-09-01T00:00:00Z", 113.18, "2026-09-02T00:00:00Z", 119.71});
  expect_holds(answer, {"foen:2135", "height", kH, false, 145, 0, "2026-09-01T00:00:00Z", 502.28,
                        "2026-09-02T00:00:00Z", 502.34});
  expect_holds(answer, {"foen:2135", "temperature", kT, false, 145, 1, "2026-09-01T00:00:00Z", 18.5,
                        "2026-09-02T00:00:00Z", 18.95});
  const auto flow = series_in(answer, "flow");
  EXPECT_EQ(flow.readings.at(138).time - flow.readings.at(137).time, std::chrono::minutes{5});  // the odd step
}

std::string foen(const std::string& payload) {
  return R"({"apiurl":"https://api.existenz.ch#hydro","payload":)" + payload + "}";
}

TEST(Foen, ColumnsThatDoNotFitAreADoubt) {
  const auto answer = read_or_tell(
      foen(R"({"1|flow_ls":[250,null],"1|flow":[1],"1|height":[1,"x"],"1|wind":[1,2],"timestamp":[0,1.5]})"), "a.json");
  EXPECT_THAT(answer.series, SizeIs(1));
  EXPECT_EQ(series_in(answer, "flow_ls").readings.at(0).si, 0.25);
  EXPECT_THAT(answer.doubts, Contains(HasSubstr("column 1|flow: 1 row left out: it is not as long as the 2 times")));
  EXPECT_THAT(
      answer.doubts,
      Contains(
          "column 1|height: 2 rows left out: a value is neither a number nor null (first at /payload/1|height/1)"));
  EXPECT_THAT(answer.doubts,
              Contains("times: 1 row left out: not whole seconds since 1970 (first at /payload/timestamp/1)"));
  EXPECT_THAT(answer.notes, Contains("parameter wind: 2 rows left out: it is not used here"));
}

TEST(Foen, AnEmptyListIsNothingFoundAndRowsAreRefused) {
  EXPECT_THAT(read_or_tell(foen("[]"), "a.json").series, IsEmpty());
  const auto rows = read_payload(foen(R"([{"timestamp":1,"loc":"2135","par":"flow","val":1}])"), "a.json");
  ASSERT_FALSE(rows);
  EXPECT_THAT(rows.error().what, HasSubstr("no columns at /payload; ask with timeseriesformat=rows"));
}

}  // namespace
}  // namespace floatwright
