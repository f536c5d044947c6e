#pragma once
// The objects inside a case for `sink --case`: the water, the parts of the line and the fly, each with its ranges.
#include <vector>

#include "adapters/in/files/typed_object.hpp"
#include "engine/sinking/steady.hpp"

namespace floatwright {

struct CaseWater {
  Length depth;
  SurfaceSpeed surface_speed;
  Profile profile;
  Temperature temperature = celsius(10.0);
};
[[nodiscard]] CaseWater read_case_water(TypedObject& in);

// The list "parts" of the root, from the fly up.
[[nodiscard]] std::vector<LinePart> read_case_parts(TypedObject& in);

// What is not given of sink rate and drag area follows from the other: a towed fly has a quarter of the drag area that
// its sink rate implies (engine/sinking/rigged_line.hpp).
[[nodiscard]] TowedFly read_case_fly(TypedObject& in, Temperature water);

}  // namespace floatwright
