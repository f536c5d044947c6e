#pragma once
// From one page of an answer to the next.
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

// `link` as the service wrote it. What was sent along goes to the next page too, so it must be on the same server.
[[nodiscard]] Result<HttpRequest> next_page(const HttpRequest& request, const std::string& link);

}  // namespace floatwright
