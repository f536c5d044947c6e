#include "engine/forecast/limb.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;

constexpr double kDeepestFall = -0.5;  // ln Q in 6 h, as in the untuned fall
constexpr double kFarthestLevel = 3.0;
constexpr Period kRemembered = hours{6};  // below a dam a change from above tells nothing later than this past the lag

void set_limb(const ForecastOrigin& origin, LimbTerms& terms) {
  const auto before = origin.history.ln_flow(origin.at() - hours{6});
  if (!before) return;
  const Discharge rounding = rounding_step(origin.history);
  const double newest = counted_change(origin.ln_now() - *before, origin.ln_now(), rounding);
  terms[Rise6h] = std::max(newest, 0.0);
  terms[Fall6h] = std::clamp(newest, kDeepestFall, 0.0);
  const auto day_before = origin.history.ln_flow(origin.at() - hours{24});
  if (!day_before) return;
  const double older = counted_change(*before - *day_before, *before, rounding);
  terms[Rise24h] = std::max(older, 0.0);
  terms[Fall24h] = std::min(older, 0.0);
}

// Each less the newest value; none of them where no such hour was read.
void set_same_hours(const ForecastOrigin& origin, Instant t, LimbTerms& terms) {
  const SameHours seen = same_hours(origin.history, t, origin.time_zone);
  if (seen.all.empty()) return;
  const double now = origin.ln_now(), usual = median(seen.all);
  terms[LikeDay] = seen.like_day.value_or(usual) - now;
  terms[WeekAgo] = seen.week_ago.value_or(usual) - now;
  terms[Days14] = usual - now;
}

void set_routed(const ForecastOrigin& origin, Period lead, LimbTerms& terms) {
  if (origin.above == nullptr) return;
  if (origin.above->below_dam && lead > origin.above->lag + kRemembered) return;
  const double change = change_from_above(origin, origin.at() + lead);
  terms[RoutedRise] = std::max(change, 0.0);
  terms[RoutedFall] = std::min(change, 0.0);
}

}  // namespace

LimbTerms limb_terms(const ForecastOrigin& origin, Discharge median, Period lead) {
  LimbTerms terms{};
  const Instant t = origin.at() + lead;
  set_limb(origin, terms);
  terms[Level] = std::clamp(origin.ln_now() - std::log(median.si()), -kFarthestLevel, kFarthestLevel);
  if (origin.state == FlowState::DailyWave) terms[Wave] = origin.untuned(t).middle - origin.ln_now();
  if (origin.state == FlowState::Regulated) set_same_hours(origin, t, terms);
  set_routed(origin, lead, terms);
  return terms;
}

LimbTerms untuned_limb(bool below_dam, Period lag, Period lead) {
  LimbTerms terms{};
  terms[Wave] = 1.0;
  terms[RoutedRise] = terms[RoutedFall] = 0.5 * std::min(1.0, duration(lag) / duration(lead));
  if (below_dam) {
    terms[LikeDay] = 0.5;
    terms[WeekAgo] = 0.3;
    terms[Days14] = 0.1;
  } else {
    terms[Fall6h] = fall_still_to_come(duration(lead));
  }
  return terms;
}

}  // namespace floatwright
