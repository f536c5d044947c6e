#pragma once
// What a service writes where a number is expected: a number or its text, nothing, a code for "missing", or a code that
// says why there is none ("Ice").
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "adapters/in/gauges/json_rows.hpp"
#include "engine/readings/reading.hpp"

namespace floatwright {

struct RowValue {
  std::optional<double> number;       // none: missing, or broken
  std::optional<std::string> broken;  // why it is no value, a phrase
  Marks marks;                        // where a code stands in place of the number
};
// "" and the numbers in `no_data` are missing; a null, too.
[[nodiscard]] RowValue row_value(std::string_view text, std::span<const double> no_data);
[[nodiscard]] RowValue row_value(const JsonValue& value, std::span<const double> no_data);

}  // namespace floatwright
