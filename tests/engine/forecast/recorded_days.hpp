#pragma once
// Daily mean flows as the U.S. Geological Survey published them (public domain), from fixtures/backtest.
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

inline std::vector<std::string> fields_of(const std::string& line) {
  std::vector<std::string> fields(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      fields.emplace_back();
    else if (c != '\r')
      fields.back() += c;
  }
  return fields;
}

inline Instant date_label(const std::string& text) {  // 2017-01-31
  std::istringstream in(text);
  int year = 0, month = 0, day = 0;
  char dash = 0;
  in >> year >> dash >> month >> dash >> day;
  return std::chrono::sys_days{std::chrono::year{year} / month / day};
}

// By station number, the digits of the columns "q_03164000_cfs" or "03164000_cfs".
inline std::map<std::string, Series<Discharge>> recorded_days(const std::string& file) {
  std::ifstream in(FLOATWRIGHT_SOURCE_DIR "/fixtures/backtest/" + file);
  std::string line;
  std::getline(in, line);
  const std::vector<std::string> heads = fields_of(line);
  std::map<std::string, Series<Discharge>> out;
  while (std::getline(in, line)) {
    const std::vector<std::string> row = fields_of(line);
    for (std::size_t i = 1; i < row.size() && i < heads.size(); ++i) {
      const auto unit = heads[i].find("_cfs");
      if (unit == std::string::npos || row[i].empty()) continue;
      Series<Discharge>& series = out[heads[i].substr(unit - 8, 8)];
      series.times.push_back(date_label(row[0]));
      series.values.push_back(cubic_feet_per_second(std::stod(row[i])));
    }
  }
  return out;
}

}  // namespace floatwright
