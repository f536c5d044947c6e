#pragma once
// A stretch routed from its upper node down to the lower end of each reach, with what joins and is taken on the way, in
// all three cases.
#include "engine/routing/stretch_sources.hpp"

namespace floatwright {

using ReachFlows = std::vector<CaseSeries>;  // [reach of the stretch or the stem], on the fine grid

// Celerity is that of each case's own mean flow over the window. A lake with a typed wave time is a reservoir that
// holds the water of that time; one without passes a change at once.
[[nodiscard]] ReachFlows routed_down(const RoutingInputs& in, const StemStretch& stretch, const CaseSeries& top,
                                     std::vector<std::string>& doubts);

}  // namespace floatwright
