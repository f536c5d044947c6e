#include "engine/temperature/tune_temperature.hpp"

#include <algorithm>
#include <cmath>
#include <list>

#include "engine/temperature/fit_curve.hpp"
#include "engine/temperature/judged_days.hpp"
#include "engine/temperature/past_bands.hpp"

namespace floatwright {
namespace {

constexpr Period kLeastRecord = std::chrono::hours{120 * 24};
constexpr Period kDay = std::chrono::hours{24};

struct LeadPast {  // its bands point at its errors
  CurveErrors errors;
  PastBands bands;

  LeadPast(const LeadPast&) = delete;
  LeadPast(const HourlyTemperatures& record, const CurveLeads& leads, Period lead)
      : errors(record, leads, lead, record.time(0)), bands(errors) {}
};
using Past = std::list<LeadPast>;  // by lead

bool inside(TemperatureChange error, const ErrorBand& band) { return error >= band.low && error <= band.high; }

struct Tally {
  double sum = 0.0;
  std::size_t n = 0;
  void add(double value) { sum += value, ++n; }
  [[nodiscard]] double mean() const { return n == 0 ? 0.0 : sum / static_cast<double>(n); }
};

TemperatureScoreRow score(const HourlyTemperatures& record, LeadPast& tuned, const RecordPart& part) {
  const Period lead = tuned.errors.lead();
  const CurveErrors plain(record, untuned_leads(), lead, part.from - kRecentErrors - 2 * kDay);
  Tally size, plain_size, same_hour, in_stated, in_band, in_untuned;
  for (std::size_t i = 0; i < tuned.errors.size(); ++i) {
    if (!part.holds(tuned.errors, i) || !tuned.errors.at(i)) continue;
    const TemperatureChange error = *tuned.errors.at(i), untuned = *plain.at(i);
    const Instant t = tuned.errors.origin(i);
    size.add(std::abs(in_kelvins(error)));
    plain_size.add(std::abs(in_kelvins(untuned)));
    same_hour.add(std::abs(in_kelvins(*record.at(t + lead) - *CurveOrigin::at(record, t)->same_hour_before(lead))));
    in_stated.add(inside(untuned, stated_band(lead)));
    if (const auto band = tuned.bands.at(i)) in_band.add(inside(error, *band));
    if (const auto recent = plain.recent(i))
      in_untuned.add(inside(untuned, scaled_band(*recent, -kUntunedQuotient, kUntunedQuotient)));
  }
  return {lead,
          size.n,
          kelvins(size.mean()),
          kelvins(plain_size.mean()),
          kelvins(same_hour.mean()),
          in_band.n,
          in_band.mean(),
          in_untuned.mean(),
          in_stated.mean()};
}

// Of a forecast made at any hour: from the origin of the errors that is no later.
std::optional<TemperatureChange> high_band(Past& past, Instant newest, Instant origin, Period lead) {
  const auto i = static_cast<std::size_t>((newest - origin + kBetweenOrigins - Period{1}) / kBetweenOrigins);
  std::vector<BandAtLead> bands{{Period{}, stated_band(Period{})}};
  for (LeadPast& one : past) {
    const auto band = one.bands.at(i);
    if (!band) return std::nullopt;
    bands.push_back({one.errors.lead(), *band});
    if (one.errors.lead() >= lead) break;
  }
  return band_at(bands, lead).high;
}

void keep_bands(CurveLeads& leads, const Past& past, Instant newest) {
  auto one = past.begin();
  for (TunedTemperatureLead& lead : leads) {
    const auto quotients = one->bands.quotients(0);
    lead.errors = quotients.errors;
    lead.low = quotients.low;
    lead.high = quotients.high;
    lead.mean_error = mean_size(one->errors, {newest - kRecentErrors, newest});
    ++one;
  }
}

struct Judged {
  CurveLeads leads;  // fitted to the first half
  Past past;         // their errors over the whole record
};

TemperatureReport report_of(const TemperatureTuningInputs& in, const HourlyTemperatures& record, Judged& judged,
                            Instant half) {
  TemperatureReport report;
  report.fitted_from = record.time(0);
  report.fitted_until = half;
  report.judged_until = record.newest();
  const RecordPart part{half, record.newest()};
  for (LeadPast& one : judged.past) report.rows.push_back(score(record, one, part));
  const DaysAsked fitted{record, judged.leads, record.time(0), half, in.time_zone};
  const DaysAsked asked{record, judged.leads, half, record.newest(), in.time_zone};
  report.maximum = judged_maxima(asked, maximum_missed(fitted));
  const auto high = [&](Instant origin, Period lead) { return high_band(judged.past, record.newest(), origin, lead); };
  report.stops = {judged_stops(asked, in.stop, 20, true, high), judged_stops(asked, in.stop, 6, false, high)};
  return report;
}

std::string why_not(const GaugeRecord& record) {
  if (record.temperature.empty())
    return record.daily_temperature.empty() ? "no water temperature is recorded: nothing was fitted"
                                            : "daily means only, which do not show the hours: nothing was fitted";
  if (record.temperature.times.back() - record.temperature.times.front() < kLeastRecord)
    return "under 120 days of water temperature: nothing was fitted";
  return "";
}

}  // namespace

TemperatureTuning tune_temperature(const TemperatureTuningInputs& in) {
  TemperatureTuning tuning;
  if (const std::string why = why_not(in.record); !why.empty()) {
    tuning.report.gauge = in.record.gauge;
    tuning.report.notes = {why};
    return tuning;
  }
  const HourlyTemperatures record(in.record.temperature);
  const Instant first = record.time(0), newest = record.newest();
  const Instant half = first + (newest - first) / 2;
  Judged judged;
  const CurveLeads fitted = fitted_leads(record, half);
  judged.leads = better_leads(fitted, fitted, record, {first, half});
  for (const TunedTemperatureLead& lead : judged.leads) judged.past.emplace_back(record, judged.leads, lead.lead);
  tuning.report = report_of(in, record, judged, half);
  tuning.report.gauge = in.record.gauge;

  TunedTemperature tuned{in.record.gauge, in.record.station, in.made_on, first, newest, {}, {}, {}};
  tuned.leads = better_leads(fitted_leads(record, newest), judged.leads, record, {half, newest});
  keep_bands(tuned.leads, judged.past, newest);
  tuned.maximum_missed = maximum_missed({record, judged.leads, half, newest, in.time_zone});
  if (!in.air.empty())
    for (const LeadPast& one : judged.past)
      if (one.errors.lead() == kDay) tuned.air_share = fitted_air_share(one.errors, in.air);
  tuning.tuned = tuned;
  return tuning;
}

}  // namespace floatwright
