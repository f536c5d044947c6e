#pragma once
// How far forecasts have been off, by state and lead, kept for a year: the band of the next one.
#include <deque>
#include <map>
#include <vector>

#include "engine/forecast/flow_band.hpp"
#include "engine/forecast/tuned_flow.hpp"

namespace floatwright {

inline constexpr std::size_t kEnoughErrors = 60;
inline constexpr Period kErrorsKept = std::chrono::hours{24 * 365};

// Of the state where it has enough, else of all states, else none.
[[nodiscard]] std::optional<LnBand> band_from(const ForecastSkill& skill, FlowState state, Period lead);

// The errors of one lead, taken in as their outcomes become known. Of a state seldom seen the newest that are enough
// are kept, however old: those of other states say less of it.
class ErrorsOfLead {
 public:
  // `error`: ln of what came over the forecast. Outcomes come in order of time.
  void add(FlowState state, Instant known, double error);
  void forget_before(Instant t);
  [[nodiscard]] std::optional<LnBand> band(FlowState state) const;
  // All states together first.
  [[nodiscard]] std::vector<PastErrors> summary(Period lead) const;

 private:
  struct Kept {
    std::deque<std::pair<Instant, double>> by_time;
    std::vector<double> ascending;
  };
  std::map<std::optional<FlowState>, Kept> errors_;  // none: all states
};

}  // namespace floatwright
