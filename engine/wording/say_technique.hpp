#pragma once
// How a rig is fished, and from where: "ANCHOR, one mend, swing", "drift, count 3, slow strip". What stops the boat is
// in capitals.
#include <string>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

[[nodiscard]] std::string say(Method method);               // "tight line"
[[nodiscard]] std::string say(Platform platform);           // "ANCHOR"
[[nodiscard]] std::string say_technique(const Technique&);  // "count 3, slow strip"
[[nodiscard]] std::string say(const Technique& technique);  // with its platform

}  // namespace floatwright
