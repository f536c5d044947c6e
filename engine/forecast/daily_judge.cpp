#include "engine/forecast/daily_judge.hpp"

#include <cmath>
#include <map>

#include "engine/forecast/daily_change.hpp"
#include "engine/forecast/judged_flow.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kFewestCompared = 60;

}  // namespace

DailyForecasts daily_forecasts(const DailyRecord& own, std::vector<double> fitted, bool used, int days) {
  DailyForecasts out{.days = days, .changes = std::move(fitted), .untuned = {}};
  for (std::size_t t = 0; t < own.size(); ++t) {
    out.untuned.push_back(untuned_change(own, t, days));
    if (!used || std::isnan(out.changes[t])) out.changes[t] = out.untuned[t];
  }
  return out;
}

std::vector<double> errors_over_holding(const DailyRecord& own, DaySpan part, int days,
                                        const std::vector<const std::vector<double>*>& compared) {
  const auto ahead = static_cast<std::size_t>(days);
  std::vector<double> errors(compared.size(), 0.0);
  double holding = 0.0;
  std::size_t count = 0;
  for (std::size_t t = part.from; t + ahead < part.to; ++t) {
    double known = own.ln_flow[t] + own.ln_flow[t + ahead];
    for (const auto* changes : compared) known += (*changes)[t];
    if (std::isnan(known)) continue;
    const double now = std::exp(own.ln_flow[t]), came = std::exp(own.ln_flow[t + ahead]);  // m3/s
    for (std::size_t c = 0; c < compared.size(); ++c) errors[c] += std::abs(now * std::exp((*compared[c])[t]) - came);
    holding += std::abs(now - came);
    ++count;
  }
  if (count < kFewestCompared || holding == 0.0) return {};
  for (double& error : errors) error /= holding;
  return errors;
}

std::vector<FlowScoreRow> judged_rows(const DailyRecord& own, const DailyForecasts& forecasts, DaySpan part) {
  const auto ahead = static_cast<std::size_t>(forecasts.days);
  const DailyMisses misses = misses_of(own, forecasts.changes, forecasts.days);
  const std::vector<double> scales = miss_scales(misses);
  JudgedFlow all;
  std::map<FlowState, JudgedFlow> of_state;
  for (std::size_t t = part.from; t + ahead < part.to; ++t) {
    if (std::isnan(misses.miss[t])) continue;
    const FlowState state = misses.state[t];
    const double held = own.ln_flow[t];
    const LnForecasts y{held + forecasts.changes[t], held, held + forecasts.untuned[t], own.ln_flow[t + ahead]};
    std::optional<LnBand> band;
    if (!std::isnan(scales[t])) band = past_band(past_errors(misses, scales, t), state, forecasts.days);
    const auto least = least_change_after_rise(own, t, forecasts.days);
    if (band) band = not_under(least, {band->low * scales[t], band->high * scales[t]}, forecasts.changes[t]);
    const LnBand stated =
        not_under(least, default_daily_band(state, forecasts.days, recent_daily_change(own, t)), forecasts.untuned[t]);
    for (JudgedFlow* judged : {&all, &of_state[state]}) judged->add(y, band, stated);
  }
  std::vector<FlowScoreRow> rows;
  const Period lead = std::chrono::days{forecasts.days};
  if (all.size() > 0) rows.push_back(all.row(std::nullopt, lead));
  for (const auto& [state, judged] : of_state) rows.push_back(judged.row(state, lead));
  return rows;
}

}  // namespace floatwright
