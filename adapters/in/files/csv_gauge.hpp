#pragma once
// A gauge that is a file: a lodge's staff gauge read by eye, a logger's export. What its columns mean is declared,
// since no two loggers agree. "csv_gauges" of settings.json.
#include <filesystem>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

// By its name in the header, or where that is empty by its place, from 1.
struct CsvColumn {
  std::string name;
  int place = 0;
};

struct CsvQuantity {
  CsvColumn column;
  Variable quantity = Variable::Flow;
  std::string unit;  // one that unit_line() knows for it
};

struct CsvGauge {
  std::string station;  // "csv:ford"
  std::filesystem::path file;
  CsvColumn time;
  std::string time_format;  // as strptime(3) has it; empty: ISO 8601, with a blank for the T too
  std::string time_zone;    // of times that are written without an offset
  char separator = ',';
  bool decimal_comma = false;
  int skip_lines = 0;                // before the header, or before the first row where no column goes by a name
  std::vector<std::string> missing;  // what is written where there is no value; a number in any of its spellings
  std::vector<CsvQuantity> columns;
  bool daily = false;  // a row is the mean of the local day its time names, whatever hour stands there; else only a row
                       // whose time is a date alone
};

}  // namespace floatwright
