#pragma once
// How a rig is fished, and from where: "ANCHOR, one mend, swing", "count 3, slow strip". A drifting boat is not named;
// what holds or stops it is, in capitals.
#include <string>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

[[nodiscard]] std::string say(Method method);               // "tight line"
[[nodiscard]] std::string say(Platform platform);           // "ANCHOR"; "" of a boat that drifts
[[nodiscard]] std::string say_technique(const Technique&);  // "count 3, slow strip"
[[nodiscard]] std::string say(const Technique& technique);  // with its platform, where it has one to name

}  // namespace floatwright
