#include "engine/forecast/judge_flow.hpp"

#include <map>

#include "engine/forecast/judged_flow.hpp"
#include "engine/forecast/past_errors.hpp"

namespace floatwright {
namespace {

// One lead walked through in time: what becomes known widens or narrows the next band.
struct LeadWalk {
  const std::vector<PastOrigin>& origins;
  const std::vector<TunedLead>& fit;
  std::size_t l = 0;
  ErrorsOfLead errors = {};
  std::size_t next = 0;  // the first origin whose outcome is not yet known
  JudgedFlow all = {};
  std::map<FlowState, JudgedFlow> of_state = {};

  [[nodiscard]] double error_of(const PastOrigin& origin) const {
    return *origin.leads[l].came - ln_forecast(origin, fit, l);
  }
  void learn_until(Instant t) {
    for (; next < origins.size() && outcome_known(origins[next], kFlowLeads[l]) <= t; ++next)
      if (origins[next].leads[l].came)
        errors.add(origins[next].state, outcome_known(origins[next], kFlowLeads[l]), error_of(origins[next]));
    errors.forget_before(t - kErrorsKept);
  }
  void judge(const PastOrigin& origin) {
    const LeadThen& then = origin.leads[l];
    const LnCases& usual = then.untuned;
    const LnForecasts y{ln_forecast(origin, fit, l), origin.ln_now, usual.middle, *then.came};
    const LnBand default_band{usual.low - usual.middle, usual.high - usual.middle};
    auto band = errors.band(origin.state);
    if (band) band = not_under(then.least, *band, y.forecast);
    for (JudgedFlow* judged : {&all, &of_state[origin.state]}) judged->add(y, band, default_band);
  }
};

}  // namespace

JudgedFit judge_flow(const std::vector<PastOrigin>& origins, const std::vector<TunedLead>& fit, Instant from,
                     Instant record_end) {
  JudgedFit out;
  out.skill.known_until = record_end;
  std::vector<FlowScoreRow> by_state;
  for (std::size_t l = 0; l < kFlowLeads.size(); ++l) {
    LeadWalk walk{origins, fit, l};
    for (const PastOrigin& origin : origins) {
      if (origin.t < from || !origin.leads[l].came) continue;
      walk.learn_until(origin.t);
      walk.judge(origin);
    }
    walk.learn_until(record_end);
    if (l == 0) out.origins = walk.all.size();
    if (walk.all.size() > 0) out.rows.push_back(walk.all.row(std::nullopt, kFlowLeads[l]));
    for (const auto& [state, judged] : walk.of_state) by_state.push_back(judged.row(state, kFlowLeads[l]));
    const auto summary = walk.errors.summary(kFlowLeads[l]);
    out.skill.errors.insert(out.skill.errors.end(), summary.begin(), summary.end());
  }
  out.rows.insert(out.rows.end(), by_state.begin(), by_state.end());
  return out;
}

}  // namespace floatwright
