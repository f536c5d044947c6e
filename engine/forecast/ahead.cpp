#include "engine/forecast/ahead.hpp"

#include <algorithm>
#include <cmath>

#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/local_clock.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr double kScheduleBand = 0.10;        // judgement
constexpr double kDeepestFall = -0.5;         // ln Q in 6 h, no more of it is carried on
constexpr Duration kRiseUndone = hours(6.0);  // as fast as it came; judgement, as the next two
constexpr Period kRiseBeganWithin = std::chrono::hours{72};
constexpr double kFallGoesOn = 0.5;
constexpr int kDaysLookedBack = 14;
constexpr std::size_t kEnoughSameHours = 5;

double ln_newest(const FlowHistory& history) { return std::log(history.rows.values.back().si()); }

LnCases with_band(double middle, LnBand band) { return {middle + band.low, middle, middle + band.high}; }

// Mean of the last three days' change over the same part of the day, each less its own day's net change.
double wave_change(const FlowHistory& history, Duration lead) {
  const double h = std::fmod(in_hours(lead), 24.0);
  const Period ahead = period(hours(h));
  double sum = 0.0;
  int days = 0;
  for (int day = 1; day <= 3; ++day) {
    const Instant start = history.newest() - std::chrono::hours{24 * day};
    const auto y0 = history.ln_flow(start), y1 = history.ln_flow(start + ahead);
    const auto y24 = history.ln_flow(start + std::chrono::hours{24});
    if (!y0 || !y1 || !y24) continue;
    sum += (*y1 - *y0) - h / 24.0 * (*y24 - *y0);
    ++days;
  }
  return days == 0 ? 0.0 : sum / days;
}

double change_ahead(const FlowHistory& history, FlowState state, Duration lead) {
  if (state == FlowState::DailyWave) return wave_change(history, lead);
  if (state == FlowState::Falling)
    return fall_still_to_come(lead) * std::clamp(history.change_6h().value_or(0.0), kDeepestFall, 0.0);
  return 0.0;
}

bool changed_within(const Dam& dam, Instant t, Period span) {
  return std::any_of(dam.schedule.begin(), dam.schedule.end(),
                     [&](const Release& r) { return r.time <= t && t - r.time < span; });
}

// The low case lets a rise be undone within 6 h and a fall go on by half of what it fell in the last six.
LnBand with_pace(LnBand band, FlowState state, Duration lead, double change_6h) {
  const double share = std::min(lead / kRiseUndone, 1.0);
  if (state == FlowState::Rising) band.low -= share * change_6h;
  if (state == FlowState::Falling) band.low += share * kFallGoesOn * std::max(change_6h, kDeepestFall);
  return band;
}

}  // namespace

std::optional<double> ln_least_after_rise(const FlowHistory& history, FlowState state, Instant t) {
  if (state != FlowState::Rising) return std::nullopt;
  const auto& times = history.rows.times;
  const auto first = std::lower_bound(times.begin(), times.end(), history.newest() - kRiseBeganWithin) - times.begin();
  const Discharge before = *std::min_element(history.rows.values.begin() + first, history.rows.values.end());
  return std::log(before.si()) + default_band(FlowState::Steady, false, duration(t - history.newest())).low;
}

LnCases by_state(const FlowHistory& history, FlowState state, bool after_wave, Instant t) {
  const Duration lead = duration(t - history.newest());
  const double middle = ln_newest(history) + change_ahead(history, state, lead);
  const LnBand band = with_pace(default_band(state, after_wave, lead), state, lead, history.change_6h().value_or(0.0));
  return with_band(middle, not_under(ln_least_after_rise(history, state, t), band, middle));
}

SameHours same_hours(const FlowHistory& history, Instant t, const std::string& time_zone) {
  SameHours seen;
  const bool kind = weekend(t, time_zone);
  for (int day = 1; day <= kDaysLookedBack; ++day) {
    const Instant then = same_hour_before(t, day, time_zone);
    const auto y = history.ln_flow(then);
    if (!y) continue;
    seen.all.push_back(*y);
    if (day == 7) seen.week_ago = y;
    if (!seen.like_day && weekend(then, time_zone) == kind) seen.like_day = y;
  }
  return seen;
}

std::optional<LnCases> same_hour(const FlowHistory& history, Instant t, const std::string& time_zone) {
  const SameHours seen = same_hours(history, t, time_zone);
  if (!seen.like_day && !seen.week_ago) return std::nullopt;
  const double like_day = seen.like_day ? *seen.like_day : *seen.week_ago;
  const double middle = (like_day + (seen.week_ago ? *seen.week_ago : like_day)) / 2.0;

  LnCases cases{middle, middle, middle};
  for (const double y : seen.all) {
    cases.low = std::min(cases.low, y);
    cases.high = std::max(cases.high, y);
  }
  if (seen.all.size() >= kEnoughSameHours) return cases;
  const LnBand wide = default_band(FlowState::Rising, false, duration(t - history.newest()));
  return LnCases{std::min(cases.low, middle + wide.low), middle, std::max(cases.high, middle + wide.high)};
}

double gauge_over_schedule(const FlowHistory& history, const Dam& dam) {
  std::vector<double> ratios;
  for (int hour = 0; hour < 24; ++hour) {
    const Instant t = history.newest() - std::chrono::hours{hour};
    const auto y = history.ln_flow(t);
    const auto release = release_at(dam, t);
    const bool settled = release && *release > Discharge{} && !changed_within(dam, t, std::chrono::hours{2});
    if (y && settled) ratios.push_back(std::exp(*y) / release->si());
  }
  if (ratios.empty()) return 1.0;
  const auto half = ratios.begin() + static_cast<std::ptrdiff_t>(ratios.size() / 2);
  std::nth_element(ratios.begin(), half, ratios.end());
  return std::clamp(*half, 0.9, 1.1);
}

LnCases by_schedule(const FlowHistory& history, const Dam& dam, double ratio, Instant t) {
  const auto release = release_at(dam, t);
  const bool typed = release && *release > Discharge{};
  const double middle = typed ? std::log(release->si() * ratio) : ln_newest(history);
  return with_band(middle, {std::log(1.0 - kScheduleBand), std::log(1.0 + kScheduleBand)});
}

}  // namespace floatwright
