#include "engine/forecast/tune_daily_flow.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/forecast/daily_judge.hpp"

namespace floatwright {
namespace {

constexpr std::array kDaysAhead{1, 2};
constexpr std::size_t kGaugesAsked = 2;  // of more, half a year of record picks one by chance
constexpr std::size_t kFewestDays = 240;  // half of them to fit to: under that the prior is as good

// One choice of gauge above, or of none, with what it would have forecast of the fitting part, by lead.
struct Way {
  const DailyMeansOf* above = nullptr;
  DailyWay way;
  std::array<std::vector<double>, kDaysAhead.size()> by_turns;
};

Way way_with(const DailyRecord& own, const DailyMeansOf* above, DaySpan fitting) {
  Way out{.above = above, .way = {}, .by_turns = {}};
  if (above == nullptr) {
    out.way = daily_way(own, nullptr, fitting);
  } else {
    const DailyRecord means = without_frozen(daily_record(above->means));
    out.way = daily_way(own, &means, fitting);
  }
  for (std::size_t l = 0; l < kDaysAhead.size(); ++l)
    out.by_turns[l] = forecast_by_turns(out.way, kDaysAhead[l], fitting);
  return out;
}

// Mean over the leads of its error over that of the way with no gauge above; 1 where too few days compare.
double error_ratio(const DailyRecord& own, DaySpan fitting, const Way& way, const Way& alone) {
  double sum = 0.0;
  for (std::size_t l = 0; l < kDaysAhead.size(); ++l) {
    const auto errors = errors_over_holding(own, fitting, kDaysAhead[l], {&way.by_turns[l], &alone.by_turns[l]});
    if (errors.empty()) return 1.0;
    sum += errors[0] / errors[1];
  }
  return sum / static_cast<double>(kDaysAhead.size());
}

Way best_way(const DailyRecord& own, DaySpan fitting, const std::vector<DailyMeansOf>& above) {
  Way alone = way_with(own, nullptr, fitting);
  Way best = alone;
  double least = 1.0;
  for (std::size_t g = 0; g < std::min(above.size(), kGaugesAsked); ++g) {
    Way way = way_with(own, &above[g], fitting);
    const double ratio = error_ratio(own, fitting, way, alone);
    if (ratio >= least) continue;
    least = ratio;
    best = std::move(way);
  }
  return best;
}

// "Where on the fitting part the result is not under persistence, that lead keeps the untuned method."
bool better_than_holding(const DailyRecord& own, DaySpan fitting, int days, const std::vector<double>& changes) {
  const auto errors = errors_over_holding(own, fitting, days, {&changes});
  return !errors.empty() && errors[0] < 1.0;
}

void tell_choice(const Way& way, std::size_t offered, FlowReport& report) {
  if (way.above != nullptr)
    report.notes.push_back("What gauge " + way.above->gauge + " above showed the same day is made use of.");
  else if (offered > 0)
    report.notes.push_back("No gauge above makes the forecast better on the fitting part; none is made use of.");
}

void keep_skill(const DailyRecord& own, const DailyForecasts& forecasts, TunedDailyLead& lead, ForecastSkill& skill) {
  const DailyMisses misses = misses_of(own, forecasts.changes, forecasts.days);
  const double all = mean_miss(misses, own.size() - 1, own.size());
  lead.mean_miss = std::isnan(all) ? 0.0 : all;
  const auto errors = past_errors(misses, miss_scales(misses), own.size() - 1);
  skill.errors.insert(skill.errors.end(), errors.begin(), errors.end());
}

// What the way says of every day: of the fitting part by turns, of the rest by what is fitted to that part.
DailyForecasts forecasts_by(const Way& chosen, DaySpan fitting, std::size_t lead, bool used) {
  const DailyWay& way = chosen.way;
  const int days = kDaysAhead[lead];
  std::vector<double> changes = chosen.by_turns[lead];
  const DailyRegressors b = fitted_to(way, days, fitting);
  for (std::size_t t = fitting.to; t < way.data.own.size(); ++t)
    changes[t] = fitted_change(way.data, way.like ? &*way.like : nullptr, b, t, days);
  return daily_forecasts(way.data.own, std::move(changes), used, days);
}

// All that is kept but the leads and their skill.
TunedDailyFlow kept(const DailyTuningInputs& in, const DailyRecord& own, const Way& chosen, double ln_median) {
  TunedDailyFlow fit;
  fit.gauge = in.own.gauge;
  fit.station = in.own.station;
  fit.made_on = in.made_on;
  fit.record_from = own.first;
  fit.record_to = own.date(own.size() - 1);
  fit.median = Discharge::from_si(std::exp(ln_median));
  fit.skill.known_until = fit.record_to;
  if (chosen.above == nullptr) {
    fit.library = library_of(own);
  } else {
    fit.gauge_above = chosen.above->gauge;
    fit.station_above = chosen.above->station;
  }
  return fit;
}

void fit_and_judge(const DailyRecord& own, DaySpan fitting, const Way& chosen, const DailyTuningInputs& in,
                   DailyTuning& out) {
  const DaySpan judging{fitting.to, own.size()}, whole{0, own.size()};
  const DailyWay on_all{.data = {.own = own, .above = chosen.way.data.above, .ln_median = ln_median_of(own, whole)},
                        .like = {}};
  TunedDailyFlow fit = kept(in, own, chosen, on_all.data.ln_median);
  std::vector<FlowScoreRow> of_states;
  for (std::size_t l = 0; l < kDaysAhead.size(); ++l) {
    TunedDailyLead lead{.days = kDaysAhead[l]};
    lead.used = better_than_holding(own, fitting, lead.days, chosen.by_turns[l]);
    lead.coefficients = fitted_to(on_all, lead.days, whole);
    const DailyForecasts forecasts = forecasts_by(chosen, fitting, l, lead.used);
    for (const FlowScoreRow& row : judged_rows(own, forecasts, judging))
      (row.state ? of_states : out.report.rows).push_back(row);
    keep_skill(own, forecasts, lead, fit.skill);
    fit.leads.push_back(lead);
  }
  out.report.rows.insert(out.report.rows.end(), of_states.begin(), of_states.end());
  out.tuned = std::move(fit);
}

}  // namespace

DailyTuning tune_daily_flow(const DailyTuningInputs& in) {
  const DailyRecord own = without_frozen(daily_record(in.own.means));
  DailyTuning out{.tuned = Absent{fmt::format("{} days of daily means; {} are needed", own.size(), kFewestDays)},
                  .report = {}};
  out.report.gauge = in.own.gauge;
  if (own.size() < kFewestDays) return out;
  const DaySpan fitting{0, own.size() / 2};
  out.report.fitted_from = own.first;
  out.report.fitted_until = own.date(fitting.to);
  out.report.judged_until = own.date(own.size() - 1);
  const Way chosen = best_way(own, fitting, in.above);
  tell_choice(chosen, in.above.size(), out.report);
  fit_and_judge(own, fitting, chosen, in, out);
  return out;
}

}  // namespace floatwright
