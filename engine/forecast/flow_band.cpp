#include "engine/forecast/flow_band.hpp"

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

// Straight lines through (0, at_zero) and the points at kLeads; the last is held.
double along_leads(const std::array<double, 4>& values, double at_zero, double lead_h) {
  double before_h = 0.0, before = at_zero;
  for (std::size_t i = 0; i < kLeads.size(); ++i) {
    if (lead_h <= kLeads[i]) return before + (values[i] - before) * (lead_h - before_h) / (kLeads[i] - before_h);
    before_h = kLeads[i];
    before = values[i];
  }
  return before;
}

std::array<double, 4> logs(const std::array<double, 4>& ratios) {
  std::array<double, 4> out{};
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
  return {along_leads(logs(row.low), 0.0, h), along_leads(logs(row.high), 0.0, h)};
}

double fall_still_to_come(Duration lead) { return along_leads(kFall, 0.0, not_negative_hours(lead)); }

}  // namespace floatwright
