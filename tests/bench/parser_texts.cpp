#include "tests/bench/parser_texts.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <chrono>

#include "engine/units/instant.hpp"

namespace floatwright {

std::string quarter_hour(std::size_t row) {
  const Instant start{date::sys_days{date::year{2020} / 1 / 1}};
  return date::format("%FT%T", start + std::chrono::minutes{15} * static_cast<std::int64_t>(row));
}

// fixtures/recorded/wsc/geomet_hydrometric-daily-mean_02GA010_2020-01.json, with instants.
std::string geomet_text(std::size_t about) {
  const auto feature = [](std::size_t i) {
    const std::string time = quarter_hour(i);
    return R"({"id":"02GA010.)" + time +
           R"(Z","type":"Feature","geometry":{"type":"Point","coordinates":[)"
           R"(-80.45503234863281,43.189720153808594]},"properties":{"IDENTIFIER":"02GA010.)" +
           time +
           R"(Z","STATION_NAME":"NITH RIVER NEAR CANNING","STATION_NUMBER":"02GA010","PROV_TERR_STATE_LOC":"ON","DATETIME":")" +
           time +
           R"(Z","LEVEL":3.6489999294281006,"DISCHARGE":19.299999237060547,"DISCHARGE_SYMBOL_EN":null,)"
           R"("DISCHARGE_SYMBOL_FR":null,"LEVEL_SYMBOL_EN":null,"LEVEL_SYMBOL_FR":null}})";
  };
  return repeated(R"({"type":"FeatureCollection","features":[)", feature, "]}", about);
}

// As tests of public clients quote it.
std::string ea_flood_text(std::size_t about) {
  const auto item = [](std::size_t i) {
    const std::string time = quarter_hour(i);
    return R"({"@id":"http://environment.data.gov.uk/flood-monitoring/data/readings/690140-level-stage-i-15_min-m/)" +
           time + R"(Z","dateTime":")" + time +
           R"(Z","measure":"http://environment.data.gov.uk/flood-monitoring/id/measures/690140-level-stage-i-15_min-m",)"
           R"("value":0.754})";
  };
  return repeated(R"({"items":[)", item, "]}", about);
}

// fixtures/recorded/ea/ea_hydrology_readings_flow_daily_2024-01.json, without blanks, of quarter hours.
std::string ea_hydrology_text(std::size_t about) {
  const auto item = [](std::size_t i) {
    const std::string time = quarter_hour(i);
    return R"({"measure":{"@id":"http://environment.data.gov.uk/hydrology/id/measures/)"
           R"(3c5cba29-2321-4289-a1fd-c355e135f4cb-flow-i-900-m3s-qualified"},"date":")" +
           time.substr(0, 10) + R"(","dateTime":")" + time +
           R"(","value":72.777,"valid":"10000","invalid":"0","missing":"0",)"
           R"("completeness":"Complete","quality":"Good"})";
  };
  return repeated(R"({"items":[)", item, "]}", about);
}

// fixtures/recorded/nwps/EXCERPT_stageflow_observed_one_point.json, without blanks.
std::string nwps_text(std::size_t about) {
  const auto point = [](std::size_t i) {
    const std::string time = quarter_hour(i);
    return R"({"validTime":")" + time + R"(Z","generatedTime":")" + time + R"(Z","primary":5.03,"secondary":20.6})";
  };
  return repeated(R"({"pedts":"HGIRG","issuedTime":"2026-07-28T13:15:00Z","primaryName":"Stage","primaryUnits":"ft",)"
                  R"("secondaryName":"Flow","secondaryUnits":"kcfs","data":[)",
                  point, "]}", about);
}

// As the service's own schema has it.
std::string nws_weather_text(std::size_t about) {
  const auto value = [](std::size_t i) {
    return R"({"validTime":")" + quarter_hour(4 * i) + R"(+00:00/PT1H","value":16.666666666666668})";
  };
  return repeated(R"({"properties":{"updateTime":"2026-09-22T05:10:00+00:00","gridId":"TOP","gridX":31,"gridY":80,)"
                  R"("temperature":{"uom":"wmoUnit:degC","values":[)",
                  value, "]}}}", about);
}

// fixtures/recorded/hubeau/EXCERPT_observations_tr_v2_B720000001_2026-09-23.json, without blanks.
std::string hubeau_text(std::size_t about) {
  const auto row = [](std::size_t i) {
    return R"({"code_site":"B7200000","code_station":"B720000001","grandeur_hydro":"H","date_debut_serie":)"
           R"("2026-09-23T00:05:00Z","date_fin_serie":"2026-09-23T19:30:00Z","code_systeme_alti_serie":31,"date_obs":")" +
           quarter_hour(i) +
           R"(Z","resultat_obs":491.0,"code_methode_obs":0,"libelle_methode_obs":"Mesurée","code_qualification_obs":16,)"
           R"("libelle_qualification_obs":"Non qualifiée","longitude":4.782579717,"latitude":50.089049099,"code_statut":4,)"
           R"("libelle_statut":"Brute","code_continuite":0,"libelle_continuite":"Continue"})";
  };
  return repeated(R"({"count":1,"next":null,"data":[)", row, "]}", about);
}

// fixtures/recorded/nve/nve_hydapi_observations_100.1.0_daily_2024.json, without blanks, of instants.
std::string nve_text(std::size_t about) {
  const auto observation = [](std::size_t i) {
    return R"({"time":")" + quarter_hour(i) + R"(Z","value":2.291431,"correction":0,"quality":3})";
  };
  return repeated(R"({"data":[{"stationId":"100.1.0","parameter":1001,"serieVersionNo":1,"method":"Instantaneous",)"
                  R"("unit":"m3/s","observations":[)",
                  observation, "]}]}", about);
}

// fixtures/recorded/foen/foen_2135_aare_bern_flow_height_temp_2026-09-01.json.
std::string foen_text(std::size_t about) {
  const std::size_t rows = about / 31;  // bytes of a time and three values
  std::string columns[4] = {"\"timestamp\":[", "\"2135|flow\":[", "\"2135|height\":[", "\"2135|temperature\":["};
  for (std::size_t i = 0; i < rows; ++i) {
    const char* const between = i == 0 ? "" : ",";
    columns[0] += between + std::to_string(1788220800 + 600 * i);
    columns[1] += fmt::format("{}113.{:02}", between, i % 100);
    columns[2] += fmt::format("{}502.{:02}", between, i % 50);
    columns[3] += fmt::format("{}18.{:02}", between, i % 30);
  }
  std::string out = R"({"payload":{)";
  for (const std::string& column : columns) out += (out.back() == '{' ? "" : ",") + column + "]";
  return out + "}}";
}

// fixtures/recorded/usgs-waterml1/WaterML1Example_01491000_no_dst_site_2012-05.xml.
std::string waterml1_text(std::size_t about) {
  std::string out =
      R"(<ns1:timeSeriesResponse xmlns:ns1="http://www.cuahsi.org/waterML/1.1/"><ns1:timeSeries><ns1:sourceInfo>)"
      R"(<ns1:siteCode network="NWIS" agencyCode="USGS">01491000</ns1:siteCode></ns1:sourceInfo><ns1:variable>)"
      R"(<ns1:variableCode>00060</ns1:variableCode><ns1:unit><ns1:unitCode>ft3/s</ns1:unitCode></ns1:unit>)"
      R"(<ns1:noDataValue>-999999.0</ns1:noDataValue></ns1:variable><ns1:values>)";
  for (std::size_t i = 0; out.size() < about; ++i)
    out += R"(<ns1:value qualifiers="A" dateTime=")" + quarter_hour(i) + R"(.000-05:00">)" + std::to_string(60 + i % 90) +
           "</ns1:value>";
  return out + R"(<ns1:method methodID="2"/></ns1:values></ns1:timeSeries></ns1:timeSeriesResponse>)";
}

// fixtures/recorded/waterml2/WaterML2Example_USGS_dv_01646500_2014.xml, with instants.
std::string waterml2_text(std::size_t about) {
  std::string out = R"(<wml2:Collection xmlns:wml2="http://www.opengis.net/waterml/2.0"><wml2:observationMember>)"
                    R"(<om:OM_Observation><om:observedProperty xlink:title="Discharge"/><om:result><wml2:MeasurementTimeseries>)"
                    R"(<wml2:defaultPointMetadata><wml2:DefaultTVPMeasurementMetadata><wml2:uom xlink:title="ft3/s"/>)"
                    "</wml2:DefaultTVPMeasurementMetadata></wml2:defaultPointMetadata>\n";
  for (std::size_t i = 0; out.size() < about; ++i)
    out += "          <wml2:point>\n            <wml2:MeasurementTVP>\n              <wml2:time>" + quarter_hour(i) +
           "Z</wml2:time>\n              <wml2:value>" + std::to_string(2300 + i % 900) +
           ".0</wml2:value>\n            </wml2:MeasurementTVP>\n          </wml2:point>\n";
  return out + "</wml2:MeasurementTimeseries></om:result></om:OM_Observation></wml2:observationMember></wml2:Collection>";
}

}  // namespace floatwright
