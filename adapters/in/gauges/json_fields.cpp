#include "adapters/in/gauges/json_fields.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

bool is_one_of(double number, const std::vector<double>& all) {
  return std::find(all.begin(), all.end(), number) != all.end();
}

RowValue number_or_missing(double number, const std::vector<double>& no_data) {
  if (!std::isfinite(number)) return {.number = {}, .broken = "the value is not a finite number", .marks = {}};
  if (is_one_of(number, no_data)) return {};
  return {.number = number, .broken = {}, .marks = {}};
}

RowValue value_of_text(const std::string& text, const std::vector<double>& no_data) {
  if (text.empty()) return {};
  if (const auto number = number_in(text)) return number_or_missing(*number, no_data);
  RowValue out;
  for (const std::string& code : codes_in(text)) {
    const auto mark = mark_of(code);
    if (!mark) return {.number = {}, .broken = "the value \"" + shown(text) + "\" is not a finite number", .marks = {}};
    out.marks.insert(*mark);
  }
  return out;
}

}  // namespace

const Json* field(const Json& object, const char* key) {
  if (!object.is_object()) return nullptr;
  const auto found = object.find(key);
  return found == object.end() ? nullptr : &*found;
}

std::optional<std::string> text_field(const Json& object, const char* key) {
  const Json* const value = field(object, key);
  if (value == nullptr || !value->is_string()) return std::nullopt;
  return value->get<std::string>();
}

std::optional<std::string> error_in(const Json& tree) {
  const Json* const error = field(tree, "error");
  if (error != nullptr && error->is_string()) return shown(error->get<std::string>());
  const Json& body = error == nullptr ? tree : *error;
  const auto code = text_field(body, "code");
  const auto message = text_field(body, error == nullptr ? "description" : "message");
  if (!code && !(error != nullptr && message)) return std::nullopt;
  return shown(code.value_or("no code")) + ": " + shown(message.value_or("no message"));
}

RowValue row_value(const Json& value, const std::vector<double>& no_data) {
  if (value.is_null()) return {};
  if (value.is_number()) return number_or_missing(value.get<double>(), no_data);
  if (value.is_string()) return value_of_text(value.get<std::string>(), no_data);
  return {
      .number = {}, .broken = std::string{"the value is of the wrong kind ("} + value.type_name() + ")", .marks = {}};
}

std::string codes_text(const Json* codes) {
  if (codes == nullptr) return {};
  if (codes->is_string()) return codes->get<std::string>();
  std::string out;
  if (codes->is_array())
    for (const Json& code : *codes)
      if (code.is_string()) out += code.get<std::string>() + " ";
  return out;
}

}  // namespace floatwright
