#pragma once
// How units of readings are written, by services and by people.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

// SI = offset + factor * value; of rain, mm an hour.
struct UnitLine {
  double factor = 1.0;
  double offset = 0.0;
};
// By any spelling met, "ft3/s", "ft^3/s", "cfs", "deg C" ..., capitals and blanks apart; none where the spelling is not
// one of the variable's. NTU counts as FNU, uncorrected.
[[nodiscard]] std::optional<UnitLine> unit_line(Variable variable, std::string_view spelling);

// All of a variable's, for a message.
[[nodiscard]] std::vector<std::string> unit_spellings(Variable variable);

}  // namespace floatwright
