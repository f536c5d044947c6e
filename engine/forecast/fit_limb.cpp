#include "engine/forecast/fit_limb.hpp"

#include <algorithm>
#include <cmath>

#include "engine/statistics/shrunk_regression.hpp"

namespace floatwright {
namespace {

constexpr double kMostWeight = 5.0;  // of an origin, times the median flow

bool counts(const PastOrigin& origin, std::size_t l, Instant until) {
  return origin.leads[l].came && outcome_known(origin, kFlowLeads[l]) <= until;
}

RegressionRows rows_of(const FittingPart& part, std::size_t l) {
  RegressionRows rows{.width = kLimbTerms, .regressors = {}, .outcomes = {}, .weights = {}};
  for (const PastOrigin& origin : part.origins) {
    if (!counts(origin, l, part.until)) continue;
    const LeadThen& then = origin.leads[l];
    rows.regressors.insert(rows.regressors.end(), then.terms.begin(), then.terms.end());
    rows.outcomes.push_back(*then.came - origin.ln_now);
    rows.weights.push_back(std::min(std::exp(origin.ln_now) / part.median.si(), kMostWeight));
  }
  return rows;
}

// Sums of |error| of discharge over the part, m3/s.
bool worth_using(const FittingPart& part, const TunedLead& fitted, std::size_t l) {
  double tuned = 0.0, held = 0.0, untuned = 0.0;
  for (const PastOrigin& origin : part.origins) {
    if (!counts(origin, l, part.until)) continue;
    const LeadThen& then = origin.leads[l];
    const double came = std::exp(*then.came);
    tuned += std::abs(std::exp(ln_tuned(origin.ln_now, fitted.coefficients, then.terms, then.like)) - came);
    held += std::abs(std::exp(origin.ln_now) - came);
    untuned += std::abs(std::exp(then.untuned.middle) - came);
  }
  return tuned < std::max(held, untuned);
}

}  // namespace

std::vector<TunedLead> fit_limb(const FittingPart& part) {
  std::vector<TunedLead> leads;
  for (std::size_t l = 0; l < kFlowLeads.size(); ++l) {
    TunedLead fitted{.lead = kFlowLeads[l]};
    const auto coefficients =
        shrunk_least_absolute(rows_of(part, l), untuned_limb(part.below_dam, part.lag, kFlowLeads[l]));
    std::copy(coefficients.begin(), coefficients.end(), fitted.coefficients.begin());
    fitted.used = worth_using(part, fitted, l);
    leads.push_back(fitted);
  }
  return leads;
}

double ln_forecast(const PastOrigin& origin, const std::vector<TunedLead>& fit, std::size_t l) {
  const LeadThen& then = origin.leads[l];
  if (then.from_above) return *then.from_above;
  return fit[l].used ? ln_tuned(origin.ln_now, fit[l].coefficients, then.terms, then.like) : then.untuned.middle;
}

}  // namespace floatwright
