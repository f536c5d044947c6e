#include "adapters/in/gauges/row_value.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

RowValue broken(std::string why) { return {.number = {}, .broken = std::move(why), .marks = {}}; }

RowValue number_or_missing(double number, std::span<const double> no_data) {
  if (!std::isfinite(number)) return broken("the value is not a finite number");
  if (std::find(no_data.begin(), no_data.end(), number) != no_data.end()) return {};
  return {.number = number, .broken = {}, .marks = {}};
}

// By JsonValue::Kind.
constexpr std::array<const char*, 7> kKinds{"absent", "null", "boolean", "number", "string", "array", "object"};

}  // namespace

RowValue row_value(std::string_view text, std::span<const double> no_data) {
  if (text.empty()) return {};
  if (const auto number = number_in(text)) return number_or_missing(*number, no_data);
  RowValue out;
  for (const std::string& code : codes_in(text)) {
    const auto mark = mark_of(code);
    if (!mark) return broken("the value \"" + printable(text) + "\" is not a finite number");
    out.marks.insert(*mark);
  }
  return out;
}

RowValue row_value(const JsonValue& value, std::span<const double> no_data) {
  switch (value.kind) {
    case JsonValue::Kind::Null:
      return {};
    case JsonValue::Kind::Number:
      return number_or_missing(value.number, no_data);
    case JsonValue::Kind::Text:
      return row_value(value.text, no_data);
    default:
      return broken(std::string{"the value is of the wrong kind ("} + kKinds[static_cast<std::size_t>(value.kind)] +
                    ")");
  }
}

}  // namespace floatwright
