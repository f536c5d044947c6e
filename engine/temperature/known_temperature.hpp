#pragma once
// What is known of the water at one place: as observed up to the newest reading, then the middle of its curve.
#include "engine/readings/gauge_record.hpp"
#include "engine/temperature/gauge_curve.hpp"

namespace floatwright {

struct KnownTemperature {
  Series<Temperature> observed{};  // empty: the curve alone
  TimeGrid grid{};
  TemperatureCurve cases{};  // one per grid step, at least one

  // None before both the readings and the grid begin.
  [[nodiscard]] std::optional<Temperature> at(Instant t) const;
};

// Linear between grid steps, held to the grid's ends.
[[nodiscard]] PerCase<Temperature> cases_at(const TemperatureCurve& curve, const TimeGrid& grid, Instant t);

}  // namespace floatwright
