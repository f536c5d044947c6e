#include "engine/forecast/judge_flow.hpp"

#include <cmath>
#include <map>

#include "engine/forecast/past_errors.hpp"
#include "engine/statistics/scores.hpp"

namespace floatwright {
namespace {

struct Judgements {
  Judged forecast, holding, untuned;  // m3/s
  std::size_t banded = 0, inside = 0, inside_default = 0;

  void add(const PastOrigin& origin, const LeadThen& then, double ln_forecast) {
    const double came = std::exp(*then.came);
    for (Judged* pairs : {&forecast, &holding, &untuned}) pairs->observed.push_back(came);
    forecast.forecast.push_back(std::exp(ln_forecast));
    holding.forecast.push_back(std::exp(origin.ln_now));
    untuned.forecast.push_back(std::exp(then.untuned.middle));
  }
};

bool inside(LnBand band, double error) { return band.low <= error && error <= band.high; }

FlowScore score_of(const Judged& pairs) {
  FlowScore score;
  score.mean_error = Discharge::from_si(mean_absolute_error(pairs));
  if (const auto efficiency = nash_sutcliffe(pairs)) score.nash_sutcliffe = *efficiency;
  if (const auto parts = kling_gupta_2009(pairs)) score.kling_gupta = parts->efficiency();
  return score;
}

double share(std::size_t part, std::size_t whole) {
  return whole == 0 ? 0.0 : static_cast<double>(part) / static_cast<double>(whole);
}

FlowScoreRow row_of(std::optional<FlowState> state, Period lead, const Judgements& judged) {
  return {.state = state,
          .lead = lead,
          .origins = judged.forecast.size(),
          .forecast = score_of(judged.forecast),
          .holding = score_of(judged.holding),
          .untuned = score_of(judged.untuned),
          .banded = judged.banded,
          .inside_band = share(judged.inside, judged.banded),
          .inside_default = share(judged.inside_default, judged.forecast.size())};
}

// One lead walked through in time: what becomes known widens or narrows the next band.
struct LeadWalk {
  const std::vector<PastOrigin>& origins;
  const std::vector<TunedLead>& fit;
  std::size_t l = 0;
  ErrorsOfLead errors = {};
  std::size_t next = 0;  // the first origin whose outcome is not yet known
  Judgements all = {};
  std::map<FlowState, Judgements> of_state = {};

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
    const double error = error_of(origin);
    const LnCases& usual = then.untuned;
    const auto band = errors.band(origin.state);
    for (Judgements* judged : {&all, &of_state[origin.state]}) {
      judged->add(origin, then, ln_forecast(origin, fit, l));
      judged->inside_default += usual.low <= *then.came && *then.came <= usual.high ? 1 : 0;
      if (!band) continue;
      ++judged->banded;
      judged->inside += inside(*band, error) ? 1 : 0;
    }
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
    if (l == 0) out.origins = walk.all.forecast.size();
    if (walk.all.forecast.size() > 0) out.rows.push_back(row_of(std::nullopt, kFlowLeads[l], walk.all));
    for (const auto& [state, judged] : walk.of_state) by_state.push_back(row_of(state, kFlowLeads[l], judged));
    const auto summary = walk.errors.summary(kFlowLeads[l]);
    out.skill.errors.insert(out.skill.errors.end(), summary.begin(), summary.end());
  }
  out.rows.insert(out.rows.end(), by_state.begin(), by_state.end());
  return out;
}

}  // namespace floatwright
