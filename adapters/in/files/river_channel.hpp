#pragma once
// "channel" of a reach: what was measured of its whole section, and sections surveyed from bank to bank.
#include "adapters/in/files/typed_object.hpp"
#include "engine/river/river.hpp"

namespace floatwright {

void read_channel(TypedObject& reach_typed, NamedReach& reach);

}  // namespace floatwright
