#pragma once
// The instants of a record at which forecasts are fitted and judged, every six hours: what was known at each, what the
// methods would have said, and what came.
#include <array>
#include <string>
#include <vector>

#include "engine/forecast/limb.hpp"

namespace floatwright {

struct LeadThen {
  LimbTerms terms{};
  std::optional<double> like;        // ln change after like instants
  std::optional<double> from_above;  // ln Q
  std::optional<double> least;       // ln Q, of the band; of a rising river
  LnCases untuned;                   // with the default band
  std::optional<double> came;        // ln Q
};
struct PastOrigin {
  Instant t{};
  FlowState state = FlowState::Unknown;
  double ln_now = 0.0;
  std::array<LeadThen, kFlowLeads.size()> leads;  // in the order of kFlowLeads
};

struct RecordLookedThrough {
  const FlowHistory& history;
  const FlowLibrary& library;  // of it
  Discharge median;            // the level 0
  bool below_dam = false;
  const FromAbove* above = nullptr;
  std::string time_zone;
};

// By time. An instant without a reading in the hour before it is left out.
[[nodiscard]] std::vector<PastOrigin> past_origins(const RecordLookedThrough& in);

// When the outcome of `lead` was surely known: what is bridged waits for the row after the gap.
[[nodiscard]] inline Instant outcome_known(const PastOrigin& origin, Period lead) {
  return origin.t + lead + kWidestBridgedGap;
}

// ln Q of the tuned method: the mean of regression and like instants. These know nothing of a gauge above: what it has
// shown counts whole.
[[nodiscard]] double ln_tuned(double ln_now, const LimbTerms& coefficients, const LimbTerms& terms,
                              std::optional<double> like);

}  // namespace floatwright
