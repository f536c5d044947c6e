#include "engine/temperature/curve_band.hpp"

#include <algorithm>
#include <array>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

using std::chrono::hours;
constexpr double kLeastBand = 0.2;  // C

constexpr BandAtLead either_way(int lead_h, double c) { return {hours{lead_h}, {kelvins(-c), kelvins(c)}}; }

constexpr std::array kStated{either_way(0, kLeastBand), either_way(3, 0.55), either_way(6, 1.0), either_way(12, 1.4),
                             either_way(24, 1.8),       either_way(36, 2.7), either_way(48, 2.8)};

// Past two days, over the band at two: as the same hour's temperature held 2 to 15 days was off at three gauges
// (docs/accuracy.md), the mean of P10 and P90.
struct Wider {
  double days, times;
};
constexpr std::array kWider{Wider{2.0, 1.0}, Wider{3.0, 1.2}, Wider{5.0, 1.4}, Wider{10.0, 1.65}, Wider{15.0, 1.9}};

double times_wider(Period lead) {
  const double days = in_hours(duration(lead)) / 24.0;
  const auto after = std::find_if(kWider.begin(), kWider.end(), [&](const Wider& w) { return days <= w.days; });
  if (after == kWider.begin()) return 1.0;
  if (after == kWider.end()) return kWider.back().times;
  const Wider& before = *(after - 1);
  return before.times + (after->times - before.times) * (days - before.days) / (after->days - before.days);
}

ErrorBand band_of(const HourlyTemperatures& record, std::span<const TunedTemperatureLead> leads,
                  const TunedTemperatureLead& lead) {
  const CurveErrors errors(record, leads, lead.lead, record.newest() - lead.lead - kRecentErrors - hours{48});
  const bool judged = lead.errors > 0;
  const double low = judged ? lead.low : -kUntunedQuotient, high = judged ? lead.high : kUntunedQuotient;
  if (const auto scale = errors.recent(0)) return scaled_band(*scale, low, high);
  return judged ? scaled_band(lead.mean_error, low, high) : stated_band(lead.lead);
}

}  // namespace

ErrorBand scaled_band(TemperatureChange scale, double low, double high) {
  return {std::min(low * scale, kelvins(-kLeastBand)), std::max(high * scale, kelvins(kLeastBand))};
}

ErrorBand band_at(std::span<const BandAtLead> bands, Period lead) {
  const auto after = std::find_if(bands.begin(), bands.end(), [&](const BandAtLead& b) { return lead <= b.lead; });
  if (after == bands.begin()) return bands.front().band;
  if (after == bands.end()) {
    const double wider = times_wider(lead);
    return {wider * bands.back().band.low, wider * bands.back().band.high};
  }
  const BandAtLead &a = *(after - 1), &b = *after;
  const double share = duration(lead - a.lead) / duration(b.lead - a.lead);
  const auto between = [&](TemperatureChange x, TemperatureChange y) { return (1.0 - share) * x + share * y; };
  return {between(a.band.low, b.band.low), between(a.band.high, b.band.high)};
}

ErrorBand stated_band(Period lead) { return band_at(kStated, lead); }

std::vector<BandAtLead> curve_bands(const HourlyTemperatures& record, const std::optional<TunedTemperature>& tuned) {
  const auto& leads = tuned ? tuned->leads : untuned_leads();
  std::vector<BandAtLead> bands{kStated.front()};
  for (const TunedTemperatureLead& lead : leads) bands.push_back({lead.lead, band_of(record, leads, lead)});
  return bands;
}

}  // namespace floatwright
