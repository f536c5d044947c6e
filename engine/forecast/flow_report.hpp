#pragma once
// How good a way of forecasting a gauge's flow has been on the part of the record that it was not fitted to.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/forecast/state_and_method.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/quantity.hpp"

namespace floatwright {

struct FlowScore {
  double nash_sutcliffe = 0.0, kling_gupta = 0.0;
  Discharge mean_error;  // mean of |forecast - what came|
};

// One lead, in one state or over all of them.
struct FlowScoreRow {
  std::optional<FlowState> state;  // none: all instants
  Period lead{};
  std::size_t origins = 0;
  FlowScore forecast;
  FlowScore holding;            // the newest value kept: persistence
  FlowScore untuned;            // the state's method with nothing fitted
  std::size_t banded = 0;       // origins with a band
  double inside_band = 0.0;     // share of `banded` that came between P10 and P90, the errors known by then only
  double inside_default = 0.0;  // the same of the stated default bands about the untuned forecast
};

struct FlowReport {
  std::string gauge;
  Instant fitted_from{}, fitted_until{}, judged_until{};  // judged from `fitted_until` on
  std::vector<FlowScoreRow> rows;                         // leads ascending, all instants before the states
  std::vector<std::string> notes;
};

}  // namespace floatwright
