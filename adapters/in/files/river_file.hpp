#pragma once
// river.json as the engine's River. Nothing is left out in silence: what could not be taken is in the reading's
// problems. Dams have the name of their releases file, not yet the schedule.
#include "adapters/in/files/typed_object.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

struct ReadRiver {
  River river;
  bool all_places_read = false;  // only then does a look at the river as a whole mean anything
};

[[nodiscard]] ReadRiver read_river(const LocatedJson& root, FileReading& reading);

}  // namespace floatwright
