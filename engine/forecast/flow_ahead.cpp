#include "engine/forecast/flow_ahead.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/like_instants.hpp"
#include "engine/forecast/past_errors.hpp"
#include "engine/forecast/past_origins.hpp"

namespace floatwright {
namespace {

constexpr Period kForgets = std::chrono::hours{6};  // after the lag, what was seen above; judgement
// P10 and P90 of the flow from above with nothing fitted, from 3 h ahead on. Judgement; over 29 km of a river with
// pulses they were 0.58 and 1.72 at 3 h (docs/accuracy.md).
constexpr double kFromAboveLow = 0.60, kFromAboveHigh = 1.65;
constexpr Period kFromAboveFrom = std::chrono::hours{3};

double between(double a, double b, double share) { return a + (b - a) * share; }
LnBand between(LnBand a, LnBand b, double share) {
  return {between(a.low, b.low, share), between(a.high, b.high, share)};
}

// Straight lines between points that start at lead 0; the last is held. There is a point.
template <class T>
T along(const std::vector<std::pair<Period, T>>& points, Period lead) {
  const auto after = std::find_if(points.begin(), points.end(), [&](const auto& point) { return point.first >= lead; });
  if (after == points.begin()) return points.front().second;
  if (after == points.end()) return points.back().second;
  const auto before = std::prev(after);
  return between(before->second, after->second,
                 duration(lead - before->first) / duration(after->first - before->first));
}

std::vector<std::optional<double>> like_changes(const ForecastOrigin& origin, const TunedFlow& tuned) {
  const auto shape = flow_shape(origin.history, tuned.median);
  if (!shape) return std::vector<std::optional<double>>(kFlowLeads.size());
  const bool same_hour = origin.state == FlowState::DailyWave || origin.state == FlowState::Regulated;
  return LikeInstants(tuned.library, tuned.median).changes(*shape, {origin.at(), same_hour, kFlowLeads});
}

void add_tuned(const TunedFlow& tuned, Instant seen_above, FlowAhead& ahead) {
  const ForecastOrigin& origin = ahead.origin;
  const auto like = like_changes(origin, tuned);
  for (const TunedLead& lead : tuned.leads) {
    const auto l =
        static_cast<std::size_t>(std::find(kFlowLeads.begin(), kFlowLeads.end(), lead.lead) - kFlowLeads.begin());
    if (l == kFlowLeads.size()) continue;
    const Instant then = origin.at() + lead.lead;
    const LnCases untuned = origin.untuned(then);
    const LnBand usual{untuned.low - untuned.middle, untuned.high - untuned.middle};
    ahead.bands.emplace_back(lead.lead, band_from(tuned.skill, origin.state, lead.lead).value_or(usual));
    if (then <= seen_above) continue;
    ahead.tuned = ahead.tuned || lead.used;
    const LimbTerms terms = limb_terms(origin, tuned.median, lead.lead);
    const double middle = lead.used ? ln_tuned(origin.ln_now(), lead.coefficients, terms, like[l]) : untuned.middle;
    ahead.departures.emplace_back(lead.lead, middle - untuned.middle);
  }
}

}  // namespace

Instant FlowAhead::seen_above_until() const {
  const Instant told = told_from_above_until(origin);
  return ln_from_above(origin, told) ? told : origin.at();
}

LnCases FlowAhead::banded_at(Instant t) const {
  const Period lead = t - origin.at();
  const LnCases untuned = origin.untuned(t);
  const auto seen = ln_from_above(origin, t);
  const double middle = seen ? *seen : untuned.middle + (departures.empty() ? 0.0 : along(departures, lead));
  if (!bands.empty()) {
    const LnBand band = not_under(ln_least_after_rise(origin.history, origin.state, t), along(bands, lead), middle);
    return {std::min(middle, middle + band.low), middle, std::max(middle, middle + band.high)};
  }
  if (!seen) return {middle + untuned.low - untuned.middle, middle, middle + untuned.high - untuned.middle};
  const double share = std::min(1.0, duration(lead) / duration(kFromAboveFrom));
  return {middle + share * std::log(kFromAboveLow), middle, middle + share * std::log(kFromAboveHigh)};
}

LnCases FlowAhead::at(Instant t) const {
  const LnCases known = banded_at(t);
  if (origin.state == FlowState::Regulated) return known;
  const LnBand band = widened({known.low - known.middle, known.high - known.middle}, duration(t - origin.at()));
  return {known.middle + band.low, known.middle, known.middle + band.high};
}

FlowAhead flow_ahead(ForecastOrigin origin, const TunedFlow* tuned) {
  FlowAhead ahead{.origin = std::move(origin), .departures = {}, .bands = {}};
  const Instant now = ahead.origin.at(), seen_above = ahead.seen_above_until();
  if (tuned == nullptr && seen_above == now) return ahead;
  ahead.departures.emplace_back(Period{}, ahead.origin.ln_now() - ahead.origin.untuned(now).middle);
  if (const auto seen = ln_from_above(ahead.origin, seen_above); seen && seen_above > now)
    ahead.departures.emplace_back(seen_above - now, *seen - ahead.origin.untuned(seen_above).middle);
  if (tuned == nullptr) {
    ahead.departures.emplace_back(seen_above - now + kForgets, 0.0);
  } else {
    ahead.bands.emplace_back(Period{}, LnBand{});
    add_tuned(*tuned, seen_above, ahead);
  }
  return ahead;
}

}  // namespace floatwright
