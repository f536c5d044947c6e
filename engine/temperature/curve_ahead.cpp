#include "engine/temperature/curve_ahead.hpp"

#include <cmath>
#include <numbers>
#include <numeric>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
constexpr Period kDay = hours{24}, kGrowthTime = hours{3};
constexpr int kShapeDays = 5;
constexpr double kYear = 365.25;  // days
enum Term : std::size_t { Change, Growth, DayMean, Shape, TenDays, ThirtyDays, SeasonCos, SeasonSin };

Period whole_days_for(Period lead) { return lead <= Period{} ? Period{} : ((lead - Period{1}) / kDay + 1) * kDay; }

TunedTemperatureLead share_of_change(int lead_h, double share) {
  TunedTemperatureLead lead;
  lead.lead = hours{lead_h};
  lead.coefficients[Change] = share;
  return lead;
}

TemperatureCoefficients between(const TemperatureCoefficients& a, const TemperatureCoefficients& b, double share) {
  TemperatureCoefficients c;
  for (std::size_t i = 0; i < c.size(); ++i) c[i] = a[i] + share * (b[i] - a[i]);
  return c;
}

// At lead 0 the forecast is the reading; from one day on T(t+h-24k h) is a day older, which one change makes up for.
TemperatureCoefficients coefficients_at(std::span<const TunedTemperatureLead> leads, Period lead) {
  TemperatureCoefficients from{};
  from[Change] = 1.0;
  Period since{};
  for (const TunedTemperatureLead& node : leads) {
    if (lead <= node.lead)
      return between(from, node.coefficients, duration(lead - since) / duration(node.lead - since));
    from = node.coefficients;
    since = node.lead;
    if (since == kDay) from[Change] += 1.0;
  }
  return from;
}

}  // namespace

const std::vector<TunedTemperatureLead>& untuned_leads() {
  static const std::vector<TunedTemperatureLead> leads{
      share_of_change(3, 0.85), share_of_change(6, 0.65), share_of_change(12, 0.45), share_of_change(18, 0.35),
      share_of_change(24, 0.0), share_of_change(36, 0.2), share_of_change(48, 0.0)};
  return leads;
}

std::optional<CurveOrigin> CurveOrigin::at(const HourlyTemperatures& record, Instant t) {
  const auto now = record.at(t), day_before = record.at(t - kDay);
  if (!now || !day_before) return std::nullopt;
  CurveOrigin origin(record, t);
  origin.slow_[Change] = in_kelvins(*now - *day_before);
  origin.add_slow_terms();
  return origin;
}

void CurveOrigin::add_slow_terms() {
  const auto just_before = record_->at(t_ - kGrowthTime), and_a_day = record_->at(t_ - kGrowthTime - kDay);
  const auto day = record_->mean(t_, 24), day_before = record_->mean(t_ - kDay, 24), ten = record_->mean(t_, 240);
  if (!just_before || !and_a_day || !day || !day_before || !ten) return;
  all_ = true;
  slow_[Growth] = slow_[Change] - in_kelvins(*just_before - *and_a_day);
  slow_[DayMean] = in_kelvins(*day - *day_before);
  slow_[TenDays] = in_kelvins(*ten - *day);
  if (const auto thirty = record_->mean(t_, 720)) slow_[ThirtyDays] = in_kelvins(*thirty - *ten);
  const double days = in_hours(duration(t_.time_since_epoch())) / 24.0;  // of which year is one and the same
  const double turn = 2.0 * std::numbers::pi * std::fmod(days, kYear) / kYear;
  slow_[SeasonCos] = std::cos(turn);
  slow_[SeasonSin] = std::sin(turn);
}

std::optional<Temperature> CurveOrigin::same_hour_before(Period lead) const {
  return record_->at(t_ + lead - whole_days_for(lead));
}

// Of a lead over a day the first day's is added, so that it has no step there.
std::optional<TemperatureChange> CurveOrigin::five_days_against_one(Period lead) const {
  if (lead > kDay) {
    const auto first = five_days_against_one(kDay), rest = five_days_against_one(lead - kDay);
    return first && rest ? std::optional{*first + *rest} : std::nullopt;
  }
  TemperatureChange sum, last;
  for (int day = 1; day <= kShapeDays; ++day) {
    const auto from = record_->at(t_ - kDay * day), to = record_->at(t_ + lead - kDay * day);
    if (!from || !to) return std::nullopt;
    if (day == 1) last = *to - *from;
    sum = sum + (*to - *from);
  }
  return (1.0 / kShapeDays) * sum + -1.0 * last;
}

TemperatureCoefficients CurveOrigin::terms(Period lead) const {
  TemperatureCoefficients x = slow_;
  if (const auto shape = five_days_against_one(lead)) x[Shape] = in_kelvins(*shape);
  return x;
}

std::optional<Temperature> CurveOrigin::ahead(Period lead, std::span<const TunedTemperatureLead> leads) const {
  while (lead > 2 * kDay) lead -= kDay;
  const auto before = same_hour_before(lead);
  if (!before) return std::nullopt;
  const TemperatureCoefficients b = coefficients_at(all_ ? leads : untuned_leads(), lead), x = terms(lead);
  return *before + kelvins(std::inner_product(b.begin(), b.end(), x.begin(), 0.0));
}

}  // namespace floatwright
