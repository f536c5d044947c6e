#pragma once
// What `tune` keeps of one gauge's sub-daily flow, so that a plan needs no archive of years: the limb regression by
// lead, the record in which like instants are looked up, and how far the forecasts of the past have been off. Plain
// values throughout; y = ln(Q / (m3/s)).
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/forecast/state_and_method.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/quantity.hpp"

namespace floatwright {

// The regressors of y(t + lead) - y(t), in the order of TunedLead::coefficients: y(t) - y(t - 6 h) and
// y(t - 6 h) - y(t - 24 h), rise and fall apart; ln(Q / median) within 3 of 0; in the wave state its change of shape;
// below a dam the same hour of the last like day, of a week ago and the median of 14 days, each less y(t); the change
// that a gauge above has shown and that arrives by t + lead, rise and fall apart.
inline constexpr std::size_t kLimbTerms = 11;
inline constexpr std::array<std::string_view, kLimbTerms> kLimbTermWords{
    "rise_6h",  "fall_6h",  "rise_24h", "fall_24h",    "level",      "wave",
    "like_day", "week_ago", "days_14",  "routed_rise", "routed_fall"};

// Where forecasts are fitted and judged; straight lines in ln between.
inline constexpr std::array<Period, 7> kFlowLeads{
    std::chrono::hours{3},  std::chrono::hours{6},  std::chrono::hours{12}, std::chrono::hours{18},
    std::chrono::hours{24}, std::chrono::hours{36}, std::chrono::hours{48}};

struct TunedLead {
  Period lead{};
  bool used = false;  // false: on the fitting part it was not better than holding, the untuned method stays
  std::array<double, kLimbTerms> coefficients{};
};

// Past errors, as ln of what came over what was forecast: 10th and 90th percentile and how many there are. Those of the
// record's last year (of a state seldom seen the newest 60) by the fit to its first half.
struct PastErrors {
  std::optional<FlowState> state;  // none: all states together
  Period lead{};
  std::size_t count = 0;
  double low = 0.0, high = 0.0;
};
struct ForecastSkill {
  Instant known_until{};  // the last outcome among them
  std::vector<PastErrors> errors;
};

// Evenly spaced past values in which like instants are looked up. A hole is not-a-number (null in a file).
struct FlowLibrary {
  Instant start{};
  Period step{std::chrono::hours{3}};
  std::vector<float> ln_flow;
};

struct TunedFlow {
  std::string gauge;    // id in river.json
  std::string station;  // whose record it was fitted to: at a gauge that now names another it is not used
  Instant made_on{};
  Instant record_from{}, record_to{};  // the part of the record it is fitted to
  bool below_dam = false;              // same hours of earlier days are among the regressors
  bool from_above = false;             // so are changes that a gauge above has shown
  Discharge median{};                  // the level 0
  std::vector<TunedLead> leads;        // ascending
  ForecastSkill skill;
  FlowLibrary library;
};

}  // namespace floatwright
