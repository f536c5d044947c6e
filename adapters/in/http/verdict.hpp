#pragma once
// What an answer's status and type mean for the one who asked, in words.
#include <optional>
#include <string>

#include "adapters/in/http/http_run.hpp"

namespace floatwright {

// 429 and 5xx: the same request may fare better later.
[[nodiscard]] bool is_passing(int status);

// Why `answer` is not what was asked for; none where it is.
[[nodiscard]] std::optional<std::string> why_no_answer(const HttpRequest& request, const HttpAnswer& answer);

}  // namespace floatwright
