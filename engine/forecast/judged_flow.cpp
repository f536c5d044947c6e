#include "engine/forecast/judged_flow.hpp"

#include <cmath>

namespace floatwright {
namespace {

void add_pair(Judged& pairs, double ln_forecast, double ln_came) {
  pairs.forecast.push_back(std::exp(ln_forecast));
  pairs.observed.push_back(std::exp(ln_came));
}

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

}  // namespace

void JudgedFlow::add(const LnForecasts& y, const std::optional<LnBand>& band, LnBand default_band) {
  add_pair(forecast_, y.forecast, y.came);
  add_pair(holding_, y.held, y.came);
  add_pair(untuned_, y.untuned, y.came);
  inside_default_ += inside(default_band, y.came - y.untuned) ? 1 : 0;
  if (!band) return;
  ++banded_;
  inside_ += inside(*band, y.came - y.forecast) ? 1 : 0;
}

FlowScoreRow JudgedFlow::row(std::optional<FlowState> state, Period lead) const {
  return {.state = state,
          .lead = lead,
          .origins = size(),
          .forecast = score_of(forecast_),
          .holding = score_of(holding_),
          .untuned = score_of(untuned_),
          .banded = banded_,
          .inside_band = share(inside_, banded_),
          .inside_default = share(inside_default_, size())};
}

}  // namespace floatwright
