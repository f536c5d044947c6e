// How the services are told apart by their answers, and what those other than USGS are asked. Names of parameters: of
// wsc-realtime, wsc-geomet, nve and foen as in the requests whose recorded answers are held or that public clients
// make; of ea-flood and ea-hydrology the services' own reference as its clients quote it; of hubeau the recorded next
// page's address.
#include <gmock/gmock.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "adapters/in/http/http_run.hpp"
#include "tests/adapters/in/gauges/holds.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;
using testing::StartsWith;

std::vector<HttpRequest> asked(const std::string& name, std::vector<std::string> stations,
                               const char* from = "2026-05-01T00:00:00Z", const char* to = "2026-05-16T12:00:00Z") {
  const auto& all = gauge_services();
  const auto service = std::find_if(all.begin(), all.end(), [&](const auto& s) { return s.name == name; });
  return service->ask({std::move(stations), *instant_in(from), *instant_in(to)}, {service->address, "k3y"});
}
std::string url(const std::string& name, const std::string& station) { return asked(name, {station}).at(0).url; }

// The service that takes these bytes for its own, as read_payload asks them; empty: none.
std::string recognised(const std::string& bytes) {
  const auto& all = gauge_services();
  const auto service = std::find_if(all.begin(), all.end(), [&](const auto& s) { return s.recognises(bytes); });
  return service == all.end() ? "" : service->name;
}

const std::vector<std::pair<std::string, std::string>> kRecorded{
    {"wsc/wsc_realtime_ws_08MF005_stage46_2025-10-21_22.csv", "wsc-realtime"},
    {"wsc/wsc_realtime_ws_08MF005_empty_header_only.csv", "wsc-realtime"},
    {"wsc/datamart_hourly_02KF005_2026-09-30.csv", "wsc-datamart"},
    {"wsc/datamart_hourly_05RE001_discharge_only_2026-09-30.csv", "wsc-datamart"},
    {"wsc/geomet_hydrometric-daily-mean_02GA010_2020-01.json", "wsc-geomet"},
    {"ea/ea_hydrology_measures_station.json", "ea-hydrology"},
    {"ea/ea_hydrology_readings_flow_daily_2024-01.json", "ea-hydrology"},
    {"nwps/EXCERPT_gauge_FIHM1_2024-03-28.json", "nwps"},
    {"nwps/EXCERPT_stageflow_observed_one_point.json", "nwps"},
    {"nwps/SHAPE_stageflow_ACRT2_trimmed_by_thirdparty_test.json", "nwps"},
    {"hubeau/EXCERPT_observations_tr_v2_B720000001_2026-09-23.json", "hubeau"},
    {"nve/nve_hydapi_observations_100.1.0_daily_2024.json", "nve"},
    {"foen/foen_2135_aare_bern_flow_height_temp_2026-09-01.json", "foen"},
    {"usgs-water-data/v1_continuous_07374000_trimmed_to_5.json", "usgs-water-data"},
    {"usgs-legacy/iv_01541200_no_timeseries_200.json", "usgs-legacy"}};

TEST(GaugeServices, AreToldByTheirAnswers) {
  for (const auto& [file, service] : kRecorded) EXPECT_EQ(recognised(recorded(file)), service) << file;
  for (const char* other : {"", "[]", "{}", "3", R"({"data":[]})", R"({"items":[],"meta":{}})", R"({"payload":{}})",
                            R"({"properties":{"temperature":{}}})", "ID,Date,Level\n", "a,b\n1,2\n"})
    EXPECT_EQ(recognised(other), "") << other;
}

// Whatever is left of a cut answer: no number that the whole did not hold.
TEST(GaugeServices, ReadNothingWrongOutOfAnAnswerThatWasCut) {
  for (const auto& [file, service] : kRecorded) {
    const std::string whole = recorded(file);
    const auto all = read_or_tell(whole, file, service);
    for (std::size_t length = 1; length + 1 < whole.size(); length += 1 + whole.size() / 97) {
      const auto cut = read_payload(whole.substr(0, length), file, service);
      if (!cut) continue;
      EXPECT_TRUE(file.ends_with(".csv")) << file << " cut at " << length;
      for (const GaugeSeries& series : cut->series) {
        const auto& readings = series_in(all, series.series_id).readings;
        ASSERT_LE(series.readings.size(), readings.size());
        for (std::size_t i = 0; i < series.readings.size(); ++i) {
          EXPECT_EQ(series.readings[i].time, readings[i].time);
          EXPECT_EQ(series.readings[i].si, readings[i].si);
        }
      }
    }
  }
}

TEST(Asking, NamesStationAndSpanAsTheServiceWantsThem) {
  EXPECT_EQ(
      url("wsc-realtime", "08MF005"),
      "https://wateroffice.ec.gc.ca/services/real_time_data/csv/inline?stations%5B%5D=08MF005&parameters%5B%5D=46&"
      "parameters%5B%5D=47&parameters%5B%5D=5&start_date=2026-05-01%2000:00:00&end_date=2026-05-16%2012:00:00");
  EXPECT_EQ(url("wsc-geomet", "08MF005"),
            "https://api.weather.gc.ca/collections/hydrometric-realtime/items?f=json&limit=10000&sortby=DATETIME&"
            "STATION_NUMBER=08MF005&datetime=2026-05-01T00:00:00Z/2026-05-16T12:00:00Z");
  EXPECT_EQ(url("ea-flood", "690140"),
            "https://environment.data.gov.uk/flood-monitoring/id/stations/690140/readings?_sorted&_limit=10000&"
            "since=2026-05-01T00:00:00Z");
  EXPECT_EQ(url("ea-hydrology", "3c5cba29"),
            "https://environment.data.gov.uk/hydrology/data/readings.json?station=3c5cba29&"
            "mineq-date=2026-05-01&maxeq-date=2026-05-16&_limit=2000000");
  EXPECT_EQ(url("nwps", "FIHM1"), "https://api.water.noaa.gov/nwps/v1/gauges/FIHM1/stageflow");
  EXPECT_EQ(url("nws-weather", "45.0100,-111.2000"), "https://api.weather.gov/points/45.01,-111.2");
  EXPECT_EQ(url("nws-weather", "45.0000,-110.0000"), "https://api.weather.gov/points/45,-110");
  EXPECT_EQ(url("hubeau", "B720000001"),
            "https://hubeau.eaufrance.fr/api/v2/hydrometrie/observations_tr?code_entite=B720000001&grandeur_hydro=H,Q&"
            "sort=asc&size=20000&date_debut_obs=2026-05-01T00:00:00Z&date_fin_obs=2026-05-16T12:00:00Z");
  EXPECT_EQ(url("nve", "100.1.0"),
            "https://hydapi.nve.no/api/v1/Observations?StationId=100.1.0&Parameter=1000,1001,1003&ResolutionTime=0&"
            "ReferenceTime=2026-05-01T00:00:00Z/2026-05-16T12:00:00Z");
  EXPECT_EQ(url("foen", "2135"),
            "https://api.existenz.ch/apiv1/hydro/daterange?locations=2135&parameters=flow,flow_ls,height,temperature&"
            "timeseriesformat=rows&startdate=2026-05-01&enddate=2026-05-17");
}

TEST(Asking, GoesTogetherWhereTheServiceTakesSeveralStationsAndElseOneByOne) {
  const std::vector<std::string> three{"a", "b", "c"};
  for (const char* name : {"wsc-realtime", "hubeau", "nve", "foen"}) {
    EXPECT_THAT(asked(name, three), SizeIs(1)) << name;
    EXPECT_EQ(asked(name, three).at(0).tag, kManyStations) << name;
    EXPECT_EQ(asked(name, {"a"}).at(0).tag, 0u) << name;
  }
  for (const char* name : {"wsc-geomet", "ea-flood", "ea-hydrology", "nwps"}) {
    EXPECT_THAT(asked(name, three), SizeIs(3)) << name;
    EXPECT_EQ(asked(name, three).at(2).tag, 2u) << name;
  }
  const auto many = asked("nve", std::vector<std::string>(11, "a"));  // more than go together
  EXPECT_THAT(many, SizeIs(11));
  EXPECT_EQ(many.back().tag, 10u);
  EXPECT_THAT(asked("hubeau", three).at(0).url, HasSubstr("code_entite=a,b,c&"));
  EXPECT_THAT(asked("wsc-realtime", three).at(0).url,
              HasSubstr("?stations%5B%5D=a&stations%5B%5D=b&stations%5B%5D=c&"));
}

TEST(Asking, CutsLongSpansWhereTheServiceHasALimit) {
  const auto years = [](const std::string& name) {
    return asked(name, {"a", "b"}, "2024-01-01T00:00:00Z", "2026-01-01T00:00:00Z");
  };
  EXPECT_THAT(years("wsc-realtime"), SizeIs(4));  // a station at a time, 18 months each
  EXPECT_THAT(years("nve"), SizeIs(2));
  EXPECT_THAT(years("foen"), SizeIs(25));
  EXPECT_THAT(years("hubeau").at(0).url, HasSubstr("date_debut_obs=2025-12-02T00:00:00Z"));
}

TEST(Asking, PutsTheKeyInAHeaderOfItsOwnAndChecksWhatComes) {
  const auto request = asked("nve", {"100.1.0"}).at(0);
  EXPECT_EQ(request.secret_header, "X-API-Key: k3y");
  for (const GaugeService& service : gauge_services()) {
    if (service.ask == nullptr || service.prefix == "usgs") continue;
    const HttpRequest one = asked(service.name, {service.prefix == "nws" ? "1,2" : "a/b?c"}).at(0);
    EXPECT_THAT(one.url, StartsWith(service.address + "/")) << service.name;
    EXPECT_THAT(one.url, Not(HasSubstr("k3y"))) << service.name;
    EXPECT_THAT(one.url, Not(HasSubstr("a/b?c"))) << service.name;  // nothing of a station's name leaves its place
    EXPECT_THAT(one.content_types, Not(IsEmpty())) << service.name;
    EXPECT_EQ(one.secret_header.empty(), service.name != "nve") << service.name;
  }
  EXPECT_THAT(asked("wsc-realtime", {"a"}).at(0).content_types, ElementsAre("csv", "text/plain", "octet-stream"));
}

}  // namespace
}  // namespace floatwright
