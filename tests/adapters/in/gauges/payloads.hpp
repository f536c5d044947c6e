#pragma once
// Recorded and made-up answers for the readers' tests.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>

#include "adapters/result.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

inline std::string recorded(const std::string& path) {
  std::ifstream in(std::string{FLOATWRIGHT_SOURCE_DIR} + "/fixtures/recorded/" + path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

inline const std::string kSeriesId = "0123456789abcdef0123456789abcdef";

// One feature of an invented station; `rest` goes before the closing brace of its properties.
inline std::string feature(const std::string& time, const std::string& value, const std::string& rest = "",
                           const std::string& unit = "ft^3/s", const std::string& parameter = "00060") {
  return R"({"type":"Feature","properties":{"time_series_id":")" + kSeriesId +
         R"(","monitoring_location_id":"USGS-00000001","parameter_code":")" + parameter +
         R"(","statistic_id":"00011","time":")" + time + R"(","value":)" + value + R"(,"unit_of_measure":")" + unit +
         R"(","approval_status":"Provisional")" + rest + "}}";
}
inline std::string features(const std::string& all, const std::string& rest = "") {
  return R"({"type":"FeatureCollection","features":[)" + all + "]" + rest + "}";
}

// One block of the older service.
inline std::string block(const std::string& rows, int method = 1, const std::string& sensor = "") {
  return R"({"value":[)" + rows + R"(],"method":[{"methodDescription":")" + sensor + R"(","methodID":)" +
         std::to_string(method) + "}]}";
}
inline std::string row(const std::string& time, const std::string& value, const std::string& qualifiers = R"(["P"])") {
  return R"({"value":)" + value + R"(,"qualifiers":)" + qualifiers + R"(,"dateTime":")" + time + R"("})";
}
inline std::string legacy(const std::string& blocks, const std::string& unit = "ft3/s",
                          const std::string& no_data = "-999999.0", const std::string& parameter = "00060") {
  return R"({"value":{"timeSeries":[{"sourceInfo":{"siteName":"Lantern","siteCode":[{"value":"00000001","agencyCode":"USGS"}]},)"
         R"("variable":{"variableCode":[{"value":")" +
         parameter +
         R"("}],"variableName":"Streamflow, ft&#179;/s",)"
         R"("unit":{"unitCode":")" +
         unit + R"("},"noDataValue":)" + no_data +
         R"(,"options":{"option":[{"name":"Statistic","optionCode":"00000"}]}},"values":[)" + blocks + "]}]}}";
}

// What a reader made of its bytes; a failure fails the test.
inline GaugeAnswer answer_or_told(const Result<GaugeAnswer>& answer) {
  EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().what);
  return answer.value_or(GaugeAnswer{});
}

inline std::string failure_told(const Result<GaugeAnswer>& answer) {
  return answer ? "no failure" : answer.error().what;
}

}  // namespace floatwright
