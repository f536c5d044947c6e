#pragma once
// Reads a JSON text of any length row by row, without a tree. A shape (json_shape.hpp) says which values are wanted and
// whose end is told; all else is only checked: one whole valid text, no key twice in one object, no nesting past what a
// gauge service sends. Nothing is asked of the order of keys.
#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>

#include "adapters/in/gauges/json_shape.hpp"
#include "adapters/result.hpp"

namespace floatwright {

inline constexpr std::size_t kDeepestNesting = 64;

struct JsonValue {
  enum class Kind : std::uint8_t { Absent, Null, Boolean, Number, Text, List, Object };
  Kind kind = Kind::Absent;
  double number = 0.0;  // of a number
  std::string text;     // of a text; where a slot is filled from a list, its texts joined with blanks

  [[nodiscard]] bool is(Kind k) const { return kind == k; }
};

struct JsonStep {
  const std::string* key = nullptr;  // null: in a list
  std::size_t index = 0;
};

// A row that has just ended.
struct JsonRow {
  int row = 0;
  std::span<const JsonValue> values;  // by slot
  std::span<const JsonStep> steps;    // from the whole to this row

  [[nodiscard]] const JsonValue& operator[](int slot) const { return values[static_cast<std::size_t>(slot)]; }
  [[nodiscard]] std::string place() const;  // as a JSON pointer
};

// `where`: file or address, named in the failure with line and column, or with a JSON pointer. What was told of rows
// before a failure is not to be used.
[[nodiscard]] Result<void> read_json_rows(std::string_view bytes, const std::string& where, const JsonShape& shape,
                                          const std::function<void(const JsonRow&)>& ended);

}  // namespace floatwright
