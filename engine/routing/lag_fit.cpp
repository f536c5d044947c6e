#include "engine/routing/lag_fit.hpp"

#include <algorithm>
#include <cmath>

#include "engine/routing/wave_travel.hpp"
#include "engine/statistics/quantile.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kRisesAlone = 10, kForExponent = 30, kForShift = 10;
constexpr double kBetter = 0.9;  // times the mean error
constexpr Duration kLeastShift = Duration::from_si(1200.0);
constexpr double kLeastShiftOfLag = 0.25;

std::vector<MatchedChange> rises_of(const std::vector<MatchedChange>& changes) {
  std::vector<MatchedChange> rises;
  std::copy_if(changes.begin(), changes.end(), std::back_inserter(rises),
               [](const MatchedChange& c) { return c.above.rise(); });
  return rises.size() >= kRisesAlone ? rises : changes;
}

LagLaw law_through(const std::vector<MatchedChange>& changes, double exponent) {
  std::vector<double> flow, time;  // m3/s, s
  for (const MatchedChange& c : changes) flow.push_back(c.flow().si());
  const auto at_flow = Discharge::from_si(median(flow));
  for (const MatchedChange& c : changes) time.push_back(travel_at(at_flow, c.lag(), c.flow(), exponent).si());
  return {at_flow, Duration::from_si(median(time)), exponent};
}

double mean_error(const std::vector<MatchedChange>& changes, const LagLaw& law) {  // s
  double sum = 0.0;
  for (const MatchedChange& c : changes) sum += std::abs((c.lag() - law.at(c.flow())).si());
  return sum / static_cast<double>(changes.size());
}

}  // namespace

Duration LagLaw::at(Discharge flow) const { return travel_at(flow, time, at_flow, exponent); }

LagLaw lag_law(const std::vector<MatchedChange>& changes, double exponent) {
  return law_through(rises_of(changes), exponent);
}

LagLaw fitted_lag_law(const std::vector<MatchedChange>& changes) {
  const auto fitted_to = rises_of(changes);
  const LagLaw usual = law_through(fitted_to, kWaveExponent);
  if (fitted_to.size() < kForExponent) return usual;
  LagLaw best = usual;
  for (int hundredth = 0; hundredth <= 60; hundredth += 2) {
    const LagLaw law = law_through(fitted_to, hundredth / 100.0);
    if (mean_error(fitted_to, law) < mean_error(fitted_to, best)) best = law;
  }
  return mean_error(fitted_to, best) < kBetter * mean_error(fitted_to, usual) ? best : usual;
}

// The split with the largest cumulated sum of residuals, each held to two of the least shifts so that no outlier leads.
std::optional<LagShift> lag_shift(const std::vector<MatchedChange>& changes, const LagLaw& law, Period step) {
  const std::size_t n = changes.size();
  if (n < 2 * kForShift) return std::nullopt;
  const double least = std::max({kLeastShift.si(), kLeastShiftOfLag * law.time.si(), 0.5 * duration(step).si()});  // s
  std::vector<double> off, held;                                                                                   // s
  for (const MatchedChange& c : changes) off.push_back((c.lag() - law.at(c.flow())).si());
  const double middle = median(off);
  double whole = 0.0;
  for (const double o : off) whole += held.emplace_back(std::clamp(o - middle, -2.0 * least, 2.0 * least));
  double sum = 0.0, largest = 0.0;
  std::size_t at = 0;
  for (std::size_t i = 0; i + kForShift < n; ++i) {
    sum += held[i];
    const double k = static_cast<double>(i + 1), all = static_cast<double>(n);
    const double apart = std::abs(sum - k / all * whole) / std::sqrt(k * (all - k));
    if (i + 1 < kForShift || apart <= largest) continue;
    largest = apart;
    at = i + 1;
  }
  const auto cut = off.begin() + static_cast<std::ptrdiff_t>(at);
  if (at == 0) return std::nullopt;
  const LagShift shift{at, Duration::from_si(median({off.begin(), cut})), Duration::from_si(median({cut, off.end()}))};
  if (std::abs((shift.after - shift.before).si()) < least) return std::nullopt;
  return shift;
}

}  // namespace floatwright
