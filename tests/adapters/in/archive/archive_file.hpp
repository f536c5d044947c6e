#pragma once
// An archive in a folder of its own, and quarter-hourly rows to fill it with.
#include <gmock/gmock.h>

#include <filesystem>
#include <string>
#include <vector>

#include "adapters/in/archive/archive.hpp"
#include "tests/adapters/in/archive/rows.hpp"
#include "tests/adapters/in/gauges/temporary_folder.hpp"

namespace floatwright::testing {

[[nodiscard]] inline std::vector<Reading> quarter_hours(int count, double si = 40.0) {
  std::vector<Reading> out;
  for (int i = 0; i < count; ++i) out.push_back({at(15 * i), si, {Mark::Provisional}});
  return out;
}

[[nodiscard]] inline std::size_t rows_in(const Archive& archive) {
  const auto all = archive.series_of(kStation, Instant::min(), Instant::max()).value();
  std::size_t rows = 0;
  for (const GaugeSeries& series : all) rows += series.readings.size();
  return rows;
}

class ArchiveFile : public ::testing::Test {
 protected:
  [[nodiscard]] Archive writing() const { return Archive::open_to_write(file_, at(0)).value(); }
  [[nodiscard]] Archive reading() const { return Archive::open_to_read(file_).value(); }
  void fill(int rows) const { ASSERT_TRUE(writing().store({flow_of(quarter_hours(rows))}, at(100))); }

  TemporaryFolder folder_;
  std::filesystem::path file_ = folder_.path() / "readings.sqlite3";
};

}  // namespace floatwright::testing
