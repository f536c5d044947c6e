#include "engine/forecast/flow_band.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

constexpr std::array<double, 4> kLeads{6.0, 12.0, 24.0, 36.0};  // h

struct BandRow {
  std::array<double, 4> low, high;  // ratio to the middle at kLeads
};
constexpr BandRow kWave{{0.90, 0.86, 0.80, 0.72}, {1.12, 1.18, 1.25, 1.34}};
constexpr BandRow kRising{{0.86, 0.74, 0.60, 0.50}, {1.45, 1.65, 1.65, 1.65}};
constexpr BandRow kQuiet{{0.94, 0.90, 0.82, 0.75}, {1.08, 1.15, 1.30, 1.42}};  // falling and steady
constexpr std::array<double, 4> kFall{0.40, 0.60, 0.85, 1.00};

constexpr std::array<double, 8> kHeldLeads{24.0, 48.0, 72.0, 96.0, 120.0, 168.0, 240.0, 360.0};  // h
constexpr std::array<double, 8> kHeldLow{0.83, 0.72, 0.66, 0.62, 0.58, 0.54, 0.50, 0.47};
constexpr std::array<double, 8> kHeldHigh{1.16, 1.36, 1.52, 1.70, 1.82, 2.11, 2.23, 2.44};

// Straight lines through (0, at_zero) and the points at `leads`; the last is held.
template <std::size_t N>
double along(const std::array<double, N>& leads, const std::array<double, N>& values, double at_zero, double lead_h) {
  double before_h = 0.0, before = at_zero;
  for (std::size_t i = 0; i < N; ++i) {
    if (lead_h <= leads[i]) return before + (values[i] - before) * (lead_h - before_h) / (leads[i] - before_h);
    before_h = leads[i];
    before = values[i];
  }
  return before;
}

template <std::size_t N>
std::array<double, N> logs(const std::array<double, N>& ratios) {
  std::array<double, N> out{};
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = std::log(ratios[i]);
  return out;
}

const BandRow& row_of(FlowState state, bool after_wave) {
  if (after_wave || state == FlowState::DailyWave) return kWave;
  return state == FlowState::Falling || state == FlowState::Steady ? kQuiet : kRising;
}

double not_negative_hours(Duration lead) { return lead < Duration{} ? 0.0 : in_hours(lead); }

}  // namespace

LnBand default_band(FlowState state, bool after_wave, Duration lead) {
  const BandRow& row = row_of(state, after_wave);
  const double h = not_negative_hours(lead);
  return {along(kLeads, logs(row.low), 0.0, h), along(kLeads, logs(row.high), 0.0, h)};
}

LnBand held_band(Duration lead) {
  const double h = not_negative_hours(lead);
  return {along(kHeldLeads, logs(kHeldLow), 0.0, h), along(kHeldLeads, logs(kHeldHigh), 0.0, h)};
}

LnBand widened(LnBand band, Duration lead) {
  const LnBand known = held_band(duration(kFarthestBand)), now = held_band(std::max(lead, duration(kFarthestBand)));
  return {band.low * now.low / known.low, band.high * now.high / known.high};
}

LnBand not_under(std::optional<double> least, LnBand band, double middle) {
  if (least) band.low = std::min(0.0, std::max(band.low, *least - middle));
  return band;
}

double fall_still_to_come(Duration lead) { return along(kLeads, kFall, 0.0, not_negative_hours(lead)); }

}  // namespace floatwright
