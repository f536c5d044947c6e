#pragma once
// A gauge's daily mean flows as ln Q, one row a day. A hole is not-a-number, which every sum over it carries on.
#include <chrono>
#include <cstddef>
#include <vector>

#include "engine/forecast/tuned_flow.hpp"
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct DailyRecord {
  std::chrono::sys_days first{};  // the station's own date
  std::vector<double> ln_flow;    // ln(Q / (m3/s))

  [[nodiscard]] std::size_t size() const { return ln_flow.size(); }
  [[nodiscard]] std::chrono::sys_days date(std::size_t t) const {
    return first + std::chrono::days{static_cast<std::chrono::days::rep>(t)};
  }
  [[nodiscard]] double change(std::size_t t) const;  // d = y(t) - y(t-1); a hole before the second row
};

inline constexpr std::size_t kRecentDays = 30;  // over which a river's late unrest is taken

// Mean size of those known of values[from] to before values[to]; not-a-number where under ten are.
[[nodiscard]] double mean_size(const std::vector<double>& values, std::size_t from, std::size_t to);

// From the first row above zero to the last; others, which have no logarithm, are holes.
[[nodiscard]] DailyRecord daily_record(const Series<Discharge>& means);

// `other` on the days of `wanted`, holes where it has none.
[[nodiscard]] DailyRecord on_the_days_of(const DailyRecord& wanted, const DailyRecord& other);

// A value that stands to the last figure for over ten days is a sensor that sticks or a release that is held; neither
// says how the river goes on. All days but the first of such a run become holes. Ten is judgement.
[[nodiscard]] DailyRecord without_frozen(DailyRecord record);

// Days kept by an earlier fit and newer ones; where both know a day the newer record holds.
[[nodiscard]] DailyRecord joined(const FlowLibrary& kept, const DailyRecord& newer);
[[nodiscard]] FlowLibrary library_of(const DailyRecord& record);  // rounded to four decimals

}  // namespace floatwright
