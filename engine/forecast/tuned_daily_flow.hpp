#pragma once
// What `tune` keeps of a gauge's daily mean flows, for a plan from a gauge of which no more is known than those: the
// regression by lead, the record in which like days are looked up, and how far the forecasts of the past have been off.
// Plain values throughout; y = ln(Q / (m3/s)), d = y(t) - y(t - 1 day).
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

// The regressors of y(t + lead) - y(t), in the order of TunedDailyLead::coefficients, rise and fall apart: d of the
// newest day and of the one before; ln(Q / median) within 3 of 0, and its product with a rise; of the gauge above, 0
// where there is none, ln of the ratio that its change would make of the flow here, and its d less the own, a rise no
// more than ln(1 + 2 Qabove/Q).
inline constexpr std::size_t kDailyTerms = 10;
inline constexpr std::array<std::string_view, kDailyTerms> kDailyTermWords{
    "rise",          "fall",       "rise_before", "fall_before", "level",
    "rise_at_level", "rise_above", "fall_above",  "more_above",  "less_above"};

struct TunedDailyLead {
  int days = 1;
  bool used = false;  // false: on the fitting part it was not better than holding, the untuned method stays
  std::array<double, kDailyTerms> coefficients{};
  double mean_miss = 0.0;  // mean |ln error| of all past forecasts that `skill` is made of
};

struct TunedDailyFlow {
  std::string gauge;    // id in river.json
  std::string station;  // whose record it was fitted to: at a gauge that now names another it is not used
  Instant made_on{};
  Instant record_from{}, record_to{};      // dates of the part of the record it is fitted to, as 00:00Z
  std::string gauge_above, station_above;  // of the upstream gauge among the regressors; empty: none
  Discharge median{};                      // the level 0
  std::vector<TunedDailyLead> leads;       // one day and two
  // Past errors over their scale, which is mean_miss^0.4 times (mean |ln error| of the last 30 days)^0.6. Falling
  // stands for falling or steady.
  ForecastSkill skill;
  FlowLibrary library;  // daily, at dates as 00:00Z; empty with a gauge above
};

}  // namespace floatwright
