#pragma once
// What a person measured at a gauge on one visit. The section that was waded or taken from a bridge is seldom the
// gauge's own, and at low and at high water seldom the same one.
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"
#include "engine/units/instant.hpp"
#include "engine/units/quantity.hpp"

namespace floatwright {

// One channel of the river; the discharges of all its channels are the visit's.
struct MeasuredChannel {
  std::string name;
  std::string type;  // "Wading", "Bridge upstream", ..., as the service writes it
  std::optional<Discharge> discharge;
  std::optional<Length> width;
  std::optional<Area> area;
  std::optional<MeanSpeed> speed;
  std::optional<Length> from_gauge;
  std::string direction;  // from the gauge: "Upstream", "Downstream", ...
};

struct FieldMeasurement {
  std::string station;          // with its service's prefix
  std::string visit;            // as the service names it
  std::optional<Instant> time;  // none: the day is not known
  bool date_only = false;       // `time` is the date (UTC) at 00:00
  std::optional<Discharge> discharge;
  std::optional<Stage> stage;
  std::string rated;      // how good, in the service's word: "Good"
  std::string condition;  // of what controls the stage: "Clear", ...
  bool ice = false;       // no measure of the channel: ice narrows it
  Marks marks;
  std::vector<MeasuredChannel> channels;
};

}  // namespace floatwright
