#pragma once
// Reading what may or may not stand in a JSON tree, without ever throwing.
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "engine/readings/reading.hpp"

namespace floatwright {

// None: no object, no such key. The key's value may be null.
[[nodiscard]] const nlohmann::json* field(const nlohmann::json& object, const char* key);
// None also where it is no string.
[[nodiscard]] std::optional<std::string> text_field(const nlohmann::json& object, const char* key);

// A service's own error in place of an answer, as "CODE: message".
[[nodiscard]] std::optional<std::string> error_in(const nlohmann::json& tree);

struct RowValue {
  std::optional<double> number;       // none: missing, or broken
  std::optional<std::string> broken;  // why it is no value, a phrase
  Marks marks;                        // where a code stands in place of the number
};
// A string or a number; null, "" and the numbers in `no_data` are missing.
[[nodiscard]] RowValue row_value(const nlohmann::json& value, const std::vector<double>& no_data);

// Codes as a string, an array of strings, or null, joined with blanks.
[[nodiscard]] std::string codes_text(const nlohmann::json* codes);

}  // namespace floatwright
