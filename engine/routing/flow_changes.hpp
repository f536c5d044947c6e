#pragma once
// The changes of flow that a gauge's record shows: rises and falls of a given size, each at its half-way point, the
// instant when half of the change has passed. That point travels as a front does, whatever spread does to its ends.
#include <vector>

#include "engine/readings/gauge_record.hpp"

namespace floatwright {

struct FlowChange {
  Instant half_way{};
  Discharge before, after;

  [[nodiscard]] bool rise() const { return after > before; }
  [[nodiscard]] double size() const { return (after - before).si(); }  // m3/s, negative for a fall
};

// The flow whose celerity carries a front: the mean of the flows before and after for a rise, the higher one for a
// fall (the lower one doubles the error of its hour or worse).
[[nodiscard]] Discharge front_flow(Discharge before, Discharge after);

// A fifth of what the flow swings on a day on which much happens (nine of ten swing less), so that of a plant's or a
// storm's changes the most count; at least ten times what a row usually stands off its neighbours and 5 % of the median
// flow, of whose three figures the last is up to 1 %. Judgement. Zero for an empty record.
[[nodiscard]] Discharge telling_change(const Series<Discharge>& record);

// Every rise and fall of at least `least`, in order. The flow turns where it comes back by a third of `least`; a change
// that pauses for an hour (under a tenth of its steepest) is two. None across a gap that is not bridged.
[[nodiscard]] std::vector<FlowChange> flow_changes(const Series<Discharge>& record, Discharge least);

}  // namespace floatwright
