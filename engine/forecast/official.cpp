#include "engine/forecast/official.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/flow_history.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr Duration kRatioFades = hours(12.0);
constexpr double kRoundingsInFlow = 20.0;
constexpr Period kWidestStep = std::chrono::hours{24};
constexpr Period kStartsLate = std::chrono::hours{48};  // as old as a reading may be
constexpr double kLeastShare = 0.1;  // of the newest reading, whatever fall is forecast; judgement

}  // namespace

double OfficialAhead::ratio() const { return std::exp(ln_now - ln_then); }

std::optional<double> OfficialAhead::ln_flow(Instant t) const {
  if (t < from) return std::nullopt;
  const auto then = value_at(flow, std::max(t, flow.times.front()), kWidestStep);
  if (!then) return std::nullopt;
  if (change_only) {
    const double own = std::exp(ln_now);
    return std::log(std::max(own + then->si() - std::exp(ln_then), kLeastShare * own));
  }
  return std::log(then->si()) + (ln_now - ln_then) * std::exp(-(duration(t - from) / kRatioFades));
}

Series<Discharge> flows_of(const OfficialForecast& forecast) {
  Series<Discharge> flows;
  for (std::size_t i = 0; i < forecast.flow.size(); ++i) {
    const Discharge flow = forecast.flow.values[i];
    if (!(flow > Discharge{}) || !std::isfinite(flow.si())) continue;
    flows.times.push_back(forecast.flow.times[i]);
    flows.values.push_back(flow);
  }
  return flows;
}

std::vector<UntoldSpan> untold_spans(const Series<Discharge>& flow, Instant from, Instant until) {
  std::vector<UntoldSpan> spans;
  for (std::size_t i = 1; i < flow.size(); ++i) {
    const UntoldSpan span{flow.times[i - 1], flow.times[i]};
    if (span.until - span.from > kWidestStep && span.until > from && span.from < until) spans.push_back(span);
  }
  return spans;
}

std::optional<OfficialAhead> official_ahead(const OfficialForecast& forecast, Instant from, double ln_now) {
  OfficialAhead ahead{.flow = flows_of(forecast), .from = from, .ln_now = ln_now};
  if (ahead.flow.empty() || ahead.until() <= from || ahead.flow.times.front() > from + kStartsLate) return std::nullopt;
  const auto then = value_at(ahead.flow, std::max(from, ahead.flow.times.front()), kWidestStep);
  if (!then) return std::nullopt;
  ahead.ln_then = std::log(then->si());
  ahead.change_only = std::exp(ln_now) < kRoundingsInFlow * common_step(ahead.flow.values).si();
  return ahead;
}

}  // namespace floatwright
