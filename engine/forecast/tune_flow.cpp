#include "engine/forecast/tune_flow.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "engine/forecast/flow_library.hpp"
#include "engine/forecast/judge_flow.hpp"
#include "engine/forecast/past_errors.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

Instant middle_of(const FlowHistory& history) {
  const Instant first = history.rows.times.front();
  return first + (history.newest() - first) / 2;
}

// Of the half that is fitted to, so that what is judged knows nothing of later.
Discharge median_until(const FlowHistory& history, Instant until) {
  std::vector<double> flows;  // m3/s
  for (std::size_t i = 0; i < history.rows.size() && history.rows.times[i] <= until; ++i)
    flows.push_back(history.rows.values[i].si());
  return Discharge::from_si(median(std::move(flows)));
}

FlowHistory fit_for_tuning(const FlowTuningInputs& in, FlowReport& report) {
  FlowHistory history = flow_history(in.record.discharge, in.made_on);
  if (const std::size_t dry = in.record.discharge.size() - history.rows.size(); dry > 0)
    report.notes.push_back(fmt::format("{} rows without a flow above zero were left out.", dry));
  // Below a dam the least release may stand still for weeks.
  if (const std::size_t frozen = in.below_dam ? 0 : leave_out_frozen(history); frozen > 0)
    report.notes.push_back(
        fmt::format("{} rows in which the flow stood still for ten days or more were left out.", frozen));
  return history;
}

FlowTuning too_short(FlowReport report, std::size_t judged) {
  return {
      Absent{fmt::format("{} instants of the record's later half can be judged; {} are needed", judged, kEnoughErrors)},
      std::move(report)};
}

}  // namespace

FlowTuning tune_flow(const FlowTuningInputs& in) {
  FlowReport report;
  report.gauge = in.record.gauge;
  const FlowHistory history = fit_for_tuning(in, report);
  if (history.rows.empty()) return too_short(std::move(report), 0);
  const Instant half = middle_of(history);
  TunedFlow tuned{.gauge = in.record.gauge,
                  .station = in.record.station,
                  .made_on = in.made_on,
                  .record_from = history.rows.times.front(),
                  .record_to = history.newest(),
                  .below_dam = in.below_dam,
                  .from_above = in.above != nullptr,
                  .median = median_until(history, half),
                  .leads = {},
                  .skill = {},
                  .library = flow_library(history)};
  const auto origins_by = [&](const FromAbove* above) {
    return past_origins({history, tuned.library, tuned.median, in.below_dam, above, in.time_zone});
  };
  const auto fitted = [&](const std::vector<PastOrigin>& origins, const FromAbove* above, Instant until) {
    return fit_limb({origins, until, tuned.median, in.below_dam, above == nullptr ? Period{} : above->lag});
  };
  const FromAbove* above_then = in.above_then == nullptr ? in.above : in.above_then;
  std::vector<PastOrigin> origins = origins_by(above_then);
  JudgedFit judged = judge_flow(origins, fitted(origins, above_then, half), half, history.newest());
  report.fitted_from = tuned.record_from;
  report.fitted_until = half;
  report.judged_until = tuned.record_to;
  report.rows = std::move(judged.rows);
  if (judged.origins < kEnoughErrors) return too_short(std::move(report), judged.origins);

  if (above_then != in.above) origins = origins_by(in.above);
  tuned.leads = fitted(origins, in.above, history.newest());
  tuned.skill = std::move(judged.skill);
  return {std::move(tuned), std::move(report)};
}

}  // namespace floatwright
