#include "engine/forecast/past_origins.hpp"

#include "engine/forecast/like_instants.hpp"
#include "engine/statistics/shrunk_regression.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;

constexpr Period kEvery = hours{6};
constexpr Period kFirstAfter = hours{120};  // the longest look back of a like instant
constexpr Period kFresh = hours{1};

// As wave_lately(), from the states that were named before.
bool wave_before(const std::vector<PastOrigin>& before, Instant t) {
  for (auto origin = before.rbegin(); origin != before.rend() && t - origin->t <= hours{240}; ++origin)
    if (origin->state == FlowState::DailyWave) return true;
  return false;
}

PastOrigin looked_at(const RecordLookedThrough& in, const ForecastOrigin& known, LikeInstants& like_instants) {
  PastOrigin origin{.t = known.at(), .state = known.state, .ln_now = known.ln_now(), .leads = {}};
  std::vector<std::optional<double>> like(kFlowLeads.size());
  const bool same_hour = known.state == FlowState::DailyWave || known.state == FlowState::Regulated;
  if (const auto shape = flow_shape(known.history, in.median))
    like = like_instants.changes(*shape, {origin.t, same_hour, kFlowLeads});
  for (std::size_t l = 0; l < kFlowLeads.size(); ++l) {
    const Instant then = origin.t + kFlowLeads[l];
    origin.leads[l] = {.terms = limb_terms(known, in.median, kFlowLeads[l]),
                       .like = like[l],
                       .from_above = ln_from_above(known, then),
                       .least = ln_least_after_rise(known.history, known.state, then),
                       .untuned = known.untuned(then),
                       .came = in.history.ln_flow(then)};
  }
  return origin;
}

}  // namespace

std::vector<PastOrigin> past_origins(const RecordLookedThrough& in) {
  std::vector<PastOrigin> origins;
  if (in.history.rows.empty()) return origins;
  LikeInstants like_instants{in.library, in.median};
  const Instant first = std::chrono::ceil<std::chrono::days>(in.history.rows.times.front()) + kFirstAfter;
  for (Instant t = first; t <= in.history.newest(); t += kEvery) {
    ForecastOrigin known{.history = known_at(in.history, t), .above = in.above, .time_zone = in.time_zone};
    if (known.history.rows.empty() || t - known.at() > kFresh) continue;
    known.state = name_state(known.history, in.below_dam, false).state;
    known.after_wave = wave_before(origins, t);
    origins.push_back(looked_at(in, known, like_instants));
  }
  return origins;
}

double ln_tuned(double ln_now, const LimbTerms& coefficients, const LimbTerms& terms, std::optional<double> like) {
  const double limb = dot(coefficients, terms);
  if (!like) return ln_now + limb;
  const double routed = coefficients[RoutedRise] * terms[RoutedRise] + coefficients[RoutedFall] * terms[RoutedFall];
  return ln_now + (limb - routed + *like) / 2.0 + routed;
}

}  // namespace floatwright
