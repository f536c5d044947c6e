#pragma once
// What a hydrograph shows, as values: the course of the flow at the put-in up to the plan's making and on to the end of
// the day planned, the hours afloat or at a spot, and a dam's changes as they pass there.
#include <optional>
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

struct FlowKnown {
  Instant at{};
  Band<Discharge> flow;
};
struct FlowCourse {
  std::string place;
  Instant from{}, to{};
  std::vector<std::vector<FlowKnown>> past;      // what the gauges read, carried there; parted where nothing is known
  std::vector<std::vector<FlowKnown>> expected;  // likewise
  std::string there;                               // "afloat 07:30-16:10", "fishing 07:30-12:00 and 14:10-19:00"
  std::vector<std::pair<Instant, Instant>> hours;  // so
  std::vector<DamFront> fronts;
};

// None where no flow is known at two instants at least.
[[nodiscard]] std::optional<FlowCourse> flow_history(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
