#include "adapters/in/gauges/service_error.hpp"

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/plain_text.hpp"

namespace floatwright {
namespace {

enum Slot : int { kError, kErrorCode, kErrorMessage, kCode, kDescription };

// {"error": "words"}, {"error": {"code", "message"}} and {"code", "description"}.
const JsonShape& shape() {
  static const JsonShape kShape{{{"/error", kError},
                                 {"/error/code", kErrorCode},
                                 {"/error/message", kErrorMessage},
                                 {"/code", kCode},
                                 {"/description", kDescription}},
                                {{"", 0}}};
  return kShape;
}

std::string text_or(const JsonValue& value, const char* otherwise) {
  return value.is(JsonValue::Kind::Text) ? shown(value.text) : otherwise;
}

std::optional<std::string> error_in(const JsonRow& whole) {
  if (whole[kError].is(JsonValue::Kind::Text)) return shown(whole[kError].text);
  const bool in_error = !whole[kError].is(JsonValue::Kind::Absent);
  const JsonValue& code = whole[in_error ? kErrorCode : kCode];
  const JsonValue& message = whole[in_error ? kErrorMessage : kDescription];
  if (!code.is(JsonValue::Kind::Text) && !(in_error && message.is(JsonValue::Kind::Text))) return std::nullopt;
  return text_or(code, "no code") + ": " + text_or(message, "no message");
}

}  // namespace

std::optional<std::string> service_error(std::string_view bytes) {
  std::optional<std::string> out;
  const auto read = read_json_rows(bytes, {}, shape(), [&](const JsonRow& whole) { out = error_in(whole); });
  return read ? out : std::nullopt;
}

}  // namespace floatwright
