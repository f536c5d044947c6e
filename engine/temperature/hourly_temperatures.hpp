#pragma once
// A record of water temperature on whole hours before its newest reading: means, the same hour on other days and a long
// tuning are then look-ups. A reading stands for the instants between it and its neighbours up to 3 h apart; wider gaps
// stay unknown. Up to an hour before the record begins its first reading is held, so that a record of just one day has
// its yesterday (judgement).
#include <cstddef>
#include <optional>
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

class HourlyTemperatures {
 public:
  explicit HourlyTemperatures(const Series<Temperature>& record);  // not empty

  [[nodiscard]] std::size_t size() const { return values_.size(); }
  [[nodiscard]] Instant time(std::size_t hour) const { return first_ + std::chrono::hours{hour}; }
  [[nodiscard]] Instant newest() const { return time(size() - 1); }
  // The last of these hours that is not after `t`: what was known by then.
  [[nodiscard]] Instant hour_by(Instant t) const { return first_ + std::chrono::floor<std::chrono::hours>(t - first_); }

  // Linear between two known hours; none beside an unknown one and outside the record.
  [[nodiscard]] std::optional<Temperature> at(Instant t) const;
  // Of this many hours, the one at `t` the last, where at least four of five are known.
  [[nodiscard]] std::optional<Temperature> mean(Instant t, int hours) const;

 private:
  Instant first_;
  std::vector<std::optional<Temperature>> values_;
  std::vector<double> sum_;            // C, of the known values before this hour
  std::vector<std::ptrdiff_t> known_;  // how many they are
};

}  // namespace floatwright
