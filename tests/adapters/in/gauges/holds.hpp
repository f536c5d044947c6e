#pragma once
// What one series of an answer holds, held against what was counted and read off the file by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "tests/adapters/in/gauges/payloads.hpp"

namespace floatwright {

struct Holds {
  std::string station, series_id;
  Variable variable;
  bool daily;
  std::size_t rows, missing;
  std::string first_time;
  double first;  // SI; of the first row with a value
  std::string last_time;
  double last;  // SI; of the last row with a value
};

inline GaugeAnswer read_or_tell(const std::string& bytes, const std::string& where,
                                const std::optional<std::string>& service = std::nullopt) {
  return answer_or_told(read_payload(bytes, where, service));
}

inline GaugeSeries series_in(const GaugeAnswer& answer, const std::string& series_id) {
  const auto found =
      std::find_if(answer.series.begin(), answer.series.end(), [&](const auto& s) { return s.series_id == series_id; });
  EXPECT_NE(found, answer.series.end()) << "no series " << series_id;
  return found == answer.series.end() ? GaugeSeries{} : *found;
}

inline void expect_holds(const GaugeAnswer& answer, const Holds& expected) {
  const testing::ScopedTrace trace(__FILE__, __LINE__, expected.station + " " + expected.series_id);
  const GaugeSeries series = series_in(answer, expected.series_id);
  EXPECT_EQ(series.station, expected.station);
  EXPECT_EQ(series.variable, expected.variable);
  EXPECT_EQ(series.daily, expected.daily);
  ASSERT_EQ(series.readings.size(), expected.rows);
  const auto has_value = [](const Reading& r) { return r.si.has_value(); };
  EXPECT_EQ(series.readings.size() -
                static_cast<std::size_t>(std::count_if(series.readings.begin(), series.readings.end(), has_value)),
            expected.missing);
  const auto first = std::find_if(series.readings.begin(), series.readings.end(), has_value);
  const auto last = std::find_if(series.readings.rbegin(), series.readings.rend(), has_value);
  ASSERT_NE(first, series.readings.end());
  EXPECT_EQ(first->time, *instant_in(expected.first_time));
  EXPECT_DOUBLE_EQ(first->si.value(), expected.first);
  EXPECT_EQ(last->time, *instant_in(expected.last_time));
  EXPECT_DOUBLE_EQ(last->si.value(), expected.last);
}

}  // namespace floatwright
