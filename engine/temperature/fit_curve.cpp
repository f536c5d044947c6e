#include "engine/temperature/fit_curve.hpp"

#include <algorithm>
#include <cmath>

#include "engine/statistics/shrunk_regression.hpp"
#include "engine/temperature/air_shift.hpp"

namespace floatwright {
namespace {

constexpr double kPriorHours = 300.0, kLeastResidual = 0.05;  // C
constexpr int kPasses = 12;
constexpr Shrinking kShrinking{kPriorHours / static_cast<double>(kBetweenOrigins / std::chrono::hours{1}),
                               kLeastResidual, kPasses};

void add_row(RegressionRows& rows, const HourlyTemperatures& record, Instant t, Period lead) {
  const auto origin = CurveOrigin::at(record, t);
  if (!origin || !origin->has_all_terms()) return;
  const auto seen = record.at(t + lead), before = origin->same_hour_before(lead);
  if (!seen || !before) return;
  const TemperatureCoefficients x = origin->terms(lead);
  rows.regressors.insert(rows.regressors.end(), x.begin(), x.end());
  rows.outcomes.push_back(in_kelvins(*seen - *before));
}

}  // namespace

CurveLeads fitted_leads(const HourlyTemperatures& record, Instant until) {
  CurveLeads leads = untuned_leads();
  for (TunedTemperatureLead& lead : leads) {
    RegressionRows rows;
    rows.width = kTemperatureTerms;
    for (Instant t = record.time(0); t + lead.lead <= until; t += kBetweenOrigins) add_row(rows, record, t, lead.lead);
    const auto fitted = shrunk_least_absolute(rows, lead.coefficients, kShrinking);
    std::copy(fitted.begin(), fitted.end(), lead.coefficients.begin());
    lead.used = true;
  }
  return leads;
}

CurveLeads better_leads(const CurveLeads& leads, const CurveLeads& judged, const HourlyTemperatures& record,
                        const RecordPart& part) {
  CurveLeads better = untuned_leads();
  for (std::size_t k = 0; k < leads.size(); ++k) {
    const Period lead = leads[k].lead;
    const auto size = [&](const CurveLeads& by) { return mean_size(CurveErrors(record, by, lead, part.from), part); };
    if (size(judged) < size(untuned_leads())) better[k] = leads[k];
  }
  return better;
}

TemperatureChange mean_size(const CurveErrors& errors, const RecordPart& part) {
  double sum = 0.0;  // C
  std::size_t n = 0;
  for (std::size_t i = 0; i < errors.size(); ++i) {
    if (!part.holds(errors, i) || !errors.at(i)) continue;
    sum += std::abs(in_kelvins(*errors.at(i)));
    ++n;
  }
  return kelvins(n == 0 ? 0.0 : sum / static_cast<double>(n));
}

double fitted_air_share(const CurveErrors& errors, const Series<Temperature>& air) {
  RegressionRows rows;
  rows.width = 1;
  for (std::size_t i = 0; i < errors.size(); ++i) {
    const auto change =
        errors.at(i) ? air_change(air, errors.origin(i), errors.origin(i) + errors.lead()) : std::nullopt;
    if (!change) continue;
    rows.regressors.push_back(in_kelvins(*change));
    rows.outcomes.push_back(in_kelvins(*errors.at(i)));
  }
  return shrunk_least_absolute(rows, std::vector{kAirShare}, kShrinking).front();
}

}  // namespace floatwright
