#pragma once
// Time zones by the names of the system's zone database.
#include <string>

#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

// Tells a name that is no zone, with the nearest that is one.
void tell_unknown_zone(TypedObject& in, std::string_view key, const std::string& name);

}  // namespace floatwright
