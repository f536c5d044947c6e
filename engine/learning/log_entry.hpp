#pragma once
// One thing met on the water, as a day's pencil notes have it, with what was believed of the flow there and then.
#include <optional>
#include <string>

#include "engine/river/river.hpp"
#include "engine/units/band.hpp"

namespace floatwright {

// Put in, taken out: what teaches a boat's pace. The put-in's hour is the entry's.
struct FloatMet {
  std::string from, to;  // access ids
  Instant taken_out{};
  Duration stopped;            // not afloat: fishing at anchor or on foot, lunch, portages
  bool stopped_noted = false;  // else as settings and river file have it
  std::string boat;
  std::optional<Band<Discharge>> flow_at_end{};  // at the take-out
};

// How deep the fly would have been with no bed below it.
struct FlyReach {
  Length depth;
  double sd_ln = 0.10;
};

struct LogEntry {
  std::string id;     // the same for the same entry
  std::string typed;  // the words it came in; may be empty
  Instant at{};
  std::optional<Instant> logged_at{};
  std::string where;  // a place's name or id, as typed
  std::optional<WaterType> water{};
  std::optional<Length> depth{};  // of the water
  bool by_count = false;          // the depth by counting a line down; else sounded
  std::optional<SurfaceSpeed> surface_speed{};
  std::optional<bool> bottom{};  // whether the fly touched it
  std::optional<FlyReach> fly{};
  std::string rod;
  std::optional<Duration> count{};
  std::optional<Temperature> temperature{};
  std::optional<FloatMet> trip{};
  std::optional<Band<Discharge>> flow{};  // of the whole river there, as notes are made at; at the put-in of a float
};

}  // namespace floatwright
