#pragma once
// Forecasts of flow gathered beside what came, for one row of a report.
#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/flow_report.hpp"
#include "engine/statistics/scores.hpp"

namespace floatwright {

// ln Q (m3/s) of what was forecast, of the newest value kept, of the untuned forecast, and of what came.
struct LnForecasts {
  double forecast = 0.0, held = 0.0, untuned = 0.0, came = 0.0;
};

class JudgedFlow {
 public:
  // Bands are about the forecast and about the untuned one.
  void add(const LnForecasts& y, const std::optional<LnBand>& band, LnBand default_band);
  [[nodiscard]] std::size_t size() const { return forecast_.size(); }
  // There is at least one forecast.
  [[nodiscard]] FlowScoreRow row(std::optional<FlowState> state, Period lead) const;

 private:
  Judged forecast_, holding_, untuned_;  // m3/s
  std::size_t banded_ = 0, inside_ = 0, inside_default_ = 0;
};

}  // namespace floatwright
