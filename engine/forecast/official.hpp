#pragma once
// An agency's forecast set to what the gauge reads: times the ratio of the newest reading to what was forecast for that
// moment, the ratio fading by e^-(lead/12 h). Where the reading is under 20 times the step to which the forecast is
// rounded, its level says nothing: then the gauge's own level and the forecast change.
#include <optional>
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct OfficialAhead {
  Series<Discharge> flow;  // above zero
  Instant from{};          // where it is set to what the gauge read
  double ln_now = 0.0;     // ln Q there
  double ln_then = 0.0;    // ln Q that was forecast for it
  bool change_only = false;

  [[nodiscard]] Instant until() const { return flow.times.back(); }
  [[nodiscard]] double ratio() const;  // of reading to forecast
  // As forecast; before `from` and across gaps as `own` has it, after the end as `own` goes on from there.
  template <class Own>
  [[nodiscard]] double ln_flow_or(Instant t, const Own& own) const {
    if (t <= until()) return ln_flow(t).value_or(own(t));
    return ln_flow(until()).value_or(own(until())) + own(t) - own(until());
  }
  // None before `from`, after `until`, and across gaps of over a day.
  [[nodiscard]] std::optional<double> ln_flow(Instant t) const;
};

// Set to `ln_now`, the gauge's ln Q at `from`. None where it does not reach both sides of `from`; a first row up to
// 48 h after it will do, and is then what was forecast for it.
[[nodiscard]] std::optional<OfficialAhead> official_ahead(const OfficialForecast& forecast, Instant from, double ln_now);

// Where a forecast of flow that goes on tells nothing for over a day: its rows before and after.
struct UntoldSpan {
  Instant from{}, until{};
};
// Those that reach into the time from `from` to `until`.
[[nodiscard]] std::vector<UntoldSpan> untold_spans(const Series<Discharge>& flow, Instant from, Instant until);

// Its rows above zero.
[[nodiscard]] Series<Discharge> flows_of(const OfficialForecast& forecast);

}  // namespace floatwright
