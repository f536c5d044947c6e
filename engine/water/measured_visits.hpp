#pragma once
// The visits of a gauge that say something of its channel: flow, width, mean depth and mean speed of the whole section,
// in the order of time. Ice, rows without a number and rows that contradict themselves are left out, each with why.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/field_measurement.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

struct MeasuredVisit {
  std::string visit;
  Instant time{};
  ChannelMeasurement channel;
};

struct VisitLeftOut {
  std::string visit;
  std::optional<Instant> time;
  std::string why;  // a phrase: "ice"
};

struct MeasuredVisits {
  std::vector<MeasuredVisit> sound;  // oldest first
  // Those whose width, depth and speed do not multiply to their flow: numbers over 0, but one of them is wrong.
  std::vector<MeasuredVisit> contradictory;
  std::vector<VisitLeftOut> left_out;  // the contradictory ones too
};

// Where a visit measured several channels the river was divided: widths, areas and flows are added up.
[[nodiscard]] MeasuredVisits measured_visits(const std::vector<FieldMeasurement>& visits);

}  // namespace floatwright
