#pragma once
// A fit judged on the origins it was not fitted to, each with only the errors known by then, and the errors that are
// known at the record's end.
#include "engine/forecast/fit_limb.hpp"
#include "engine/forecast/flow_report.hpp"

namespace floatwright {

struct JudgedFit {
  std::vector<FlowScoreRow> rows;
  ForecastSkill skill;
  std::size_t origins = 0;  // judged, at the shortest lead
};

// Judged are the origins from `from` on; errors known before that are those of the fitting part.
[[nodiscard]] JudgedFit judge_flow(const std::vector<PastOrigin>& origins, const std::vector<TunedLead>& fit,
                                   Instant from, Instant record_end);

}  // namespace floatwright
