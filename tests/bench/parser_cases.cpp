#include "tests/bench/parser_cases.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <pugixml.hpp>

#include "adapters/in/gauges/ea_flood/read_answer.hpp"
#include "adapters/in/gauges/ea_hydrology/read_answer.hpp"
#include "adapters/in/gauges/foen/read_answer.hpp"
#include "adapters/in/gauges/hubeau/read_answer.hpp"
#include "adapters/in/gauges/nve/read_answer.hpp"
#include "adapters/in/gauges/nwps/read_answer.hpp"
#include "adapters/in/gauges/nws_weather/read_answer.hpp"
#include "adapters/in/gauges/usgs_legacy/read_answer.hpp"
#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"
#include "adapters/in/gauges/usgs_waterml1/read_answer.hpp"
#include "adapters/in/gauges/waterml2/read_answer.hpp"
#include "adapters/in/gauges/wsc_geomet/read_answer.hpp"
#include "tests/bench/parser_texts.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

// fixtures/recorded/usgs-water-data/v1_continuous_07374000_trimmed_to_5.json, without blanks.
std::string water_data(std::size_t about) {
  const auto feature = [](std::size_t i) {
    return R"({"type":"Feature","properties":{"time_series_id":"31494a236cc7437bbfd6908e83fb5c07",)"
           R"("monitoring_location_id":"USGS-07374000","parameter_code":"00060","statistic_id":"00011","time":")" +
           quarter_hour(i) + R"(+00:00","value":")" + std::to_string(402000 - i % 5000) +
           R"(","unit_of_measure":"ft^3/s","approval_status":"Approved","qualifier":null,)"
           R"("last_modified":"2025-08-16T15:54:21.545017+00:00","method_category":null},"id":")" +
           fmt::format("{:08x}-d36b-42fc-a756-e0312446d1b6", i) +
           R"(","geometry":{"type":"Point","coordinates":[-91.1915555555556,30.4456666666667]}})";
  };
  return repeated(R"({"type":"FeatureCollection","features":[)", feature, "]}", about);
}

// fixtures/recorded/usgs-legacy/iv_03213700_discharge_15min_2016-09_approved.json.
std::string legacy(std::size_t about) {
  const auto row = [](std::size_t i) {
    return R"({"value":")" + std::to_string(276 + i % 90) + R"(","qualifiers":["A"],"dateTime":")" + quarter_hour(i) +
           R"(.000-04:00"})";
  };
  return repeated(
      R"({"value":{"timeSeries":[{"sourceInfo":{"siteCode":[{"value":"03213700","agencyCode":"USGS"}]},"variable":)"
      R"({"variableCode":[{"value":"00060"}],"unit":{"unitCode":"ft3/s"},"noDataValue":-999999.0},"values":[{"value":[)",
      row, R"(],"method":[{"methodDescription":"","methodID":160874}]}]}]}})", about);
}

template <auto Read>
std::size_t rows_read(std::string_view bytes) {
  const auto answer = Read(bytes, "bench");
  std::size_t out = 0;
  if (answer)
    for (const GaugeSeries& series : answer->series) out += series.readings.size();
  return out;
}

struct Nothing final {
  bool null() { return true; }
  bool boolean(bool) { return true; }
  bool number_integer(Json::number_integer_t) { return true; }
  bool number_unsigned(Json::number_unsigned_t) { return true; }
  bool number_float(Json::number_float_t, const std::string&) { return true; }
  bool string(std::string&) { return true; }
  bool binary(Json::binary_t&) { return true; }
  bool start_object(std::size_t) { return true; }
  bool key(std::string&) { return true; }
  bool end_object() { return true; }
  bool start_array(std::size_t) { return true; }
  bool end_array() { return true; }
  bool parse_error(std::size_t, const std::string&, const Json::exception&) { return false; }
};

}  // namespace

bool bare_json(std::string_view bytes) {
  Nothing nothing;
  return Json::sax_parse(bytes.data(), bytes.data() + bytes.size(), &nothing);
}

bool bare_xml(std::string_view bytes) {
  pugi::xml_document document;
  return document.load_buffer(bytes.data(), bytes.size());
}

const std::vector<ParserCase>& parser_cases() {
  static const std::vector<ParserCase> kCases{
      {"usgs-water-data", water_data, rows_read<read_usgs_water_data>, bare_json},
      {"usgs-legacy", legacy, rows_read<read_usgs_legacy>, bare_json},
      {"wsc-geomet", geomet_text, rows_read<read_wsc_geomet>, bare_json},
      {"ea-flood", ea_flood_text, rows_read<read_ea_flood>, bare_json},
      {"ea-hydrology", ea_hydrology_text, rows_read<read_ea_hydrology>, bare_json},
      {"nwps", nwps_text, rows_read<read_nwps>, bare_json},
      {"nws-weather", nws_weather_text, rows_read<read_nws_weather>, bare_json},
      {"hubeau", hubeau_text, rows_read<read_hubeau>, bare_json},
      {"nve", nve_text, rows_read<read_nve>, bare_json},
      // Misses both bars: eight bytes of text are a reading, which takes 32 to keep.
      {"foen", foen_text, rows_read<read_foen>, bare_json},
      {"usgs-waterml1", waterml1_text, rows_read<read_usgs_waterml1>, bare_xml, 0.5},
      {"waterml2", waterml2_text, rows_read<read_waterml2>, bare_xml, 0.5}};
  return kCases;
}

}  // namespace floatwright
