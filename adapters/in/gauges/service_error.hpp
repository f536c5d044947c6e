#pragma once
// A service's own error in place of an answer.
#include <optional>
#include <string>
#include <string_view>

namespace floatwright {

// As "CODE: message", shortened; none: the bytes are no such error.
[[nodiscard]] std::optional<std::string> service_error(std::string_view bytes);

}  // namespace floatwright
