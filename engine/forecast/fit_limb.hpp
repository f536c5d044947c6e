#pragma once
// The regression of every lead fitted to past origins, and whether it is worth using there.
#include <vector>

#include "engine/forecast/past_origins.hpp"

namespace floatwright {

struct FittingPart {
  const std::vector<PastOrigin>& origins;
  Instant until{};  // outcomes known later are left out
  Discharge median;
  bool below_dam = false;
  Period lag{};  // of the gauge above; 0: none
};

// In the order of kFlowLeads. A lead is not used where the mean of regression and like instants errs more than
// holding and more than the untuned method.
[[nodiscard]] std::vector<TunedLead> fit_limb(const FittingPart& part);

// ln Q that the fit forecasts at the l-th lead: the flow from above inside its lag, the tuned method where it is used,
// else the untuned.
[[nodiscard]] double ln_forecast(const PastOrigin& origin, const std::vector<TunedLead>& fit, std::size_t l);

}  // namespace floatwright
