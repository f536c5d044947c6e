#pragma once
// The flow at a gauge that is silent, or was never read, as an agency's forecast alone has it: nothing sets it to the
// gauge. From the newest reading to the forecast's first row a straight line in ln; after its last row that is held.
#include <optional>

#include "engine/forecast/ahead.hpp"
#include "engine/forecast/outlook.hpp"

namespace floatwright {

struct OfficialAlone {
  FlowHistory told;      // what was read, then what is forecast
  Instant known_until{};  // the newest reading or the issue, whichever is older; where none was read 48 h before the issue

  // How far an agency errs is not recorded here: the band is that of a flow held since `known_until`.
  [[nodiscard]] LnCases at(Instant t) const;
};

// None where the forecast does not begin by 6 h from `now` or has ended. Adds to `outlook` what is to be said of it.
[[nodiscard]] std::optional<OfficialAlone> official_alone(const OutlookInputs& in, const FlowHistory& history, Instant now,
                                                          Instant until, GaugeOutlook& outlook);

}  // namespace floatwright
