#include "adapters/in/gauges/service_error.hpp"

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

enum Slot : int { kError, kErrorCode, kErrorMessage, kCode, kMessage };

// {"error": "words"}, {"error": {"code", "message"}}, {"code", "description"} (OGC API), {"code", "message"} with a
// number (google.rpc.Status) and {"title", "detail"} (RFC 7807).
const JsonShape& shape() {
  static const JsonShape kShape{{{"/error", kError},
                                 {"/error/code", kErrorCode},
                                 {"/error/message", kErrorMessage},
                                 {"/code", kCode},
                                 {"/title", kCode},
                                 {"/description", kMessage},
                                 {"/message", kMessage},
                                 {"/detail", kMessage}},
                                {{"", 0}}};
  return kShape;
}

std::string text_or(const JsonValue& value, const char* otherwise) {
  if (value.is(JsonValue::Kind::Number)) return std::to_string(static_cast<long>(value.number));
  return value.is(JsonValue::Kind::Text) ? printable(value.text) : otherwise;
}

std::optional<std::string> error_in(const JsonRow& whole) {
  if (whole[kError].is(JsonValue::Kind::Text)) return printable(whole[kError].text);
  const bool in_error = !whole[kError].is(JsonValue::Kind::Absent);
  const JsonValue& code = whole[in_error ? kErrorCode : kCode];
  const JsonValue& message = whole[in_error ? kErrorMessage : kMessage];
  const bool told = message.is(JsonValue::Kind::Text);
  if (!code.is(JsonValue::Kind::Text) && !(told && (in_error || code.is(JsonValue::Kind::Number)))) return std::nullopt;
  return text_or(code, "no code") + ": " + text_or(message, "no message");
}

}  // namespace

std::optional<std::string> service_error(std::string_view bytes) {
  std::optional<std::string> out;
  const auto read = read_json_rows(bytes, {}, shape(), [&](const JsonRow& whole) { out = error_in(whole); });
  return read ? out : std::nullopt;
}

}  // namespace floatwright
