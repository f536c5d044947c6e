#pragma once
// A caution in a few words for a line that is read at a glance, with its place and hours before it as everywhere:
// "Alder Bar, 12:40 (12:00-13:30): dam rise, no wading or anchoring". What a person typed stands as typed.
#include <string>

#include "engine/wording/say_caution.hpp"

namespace floatwright {

// Without place, hours and full stop.
[[nodiscard]] std::string say_what_briefly(const Caution& caution, const CautionWords& words);

}  // namespace floatwright
