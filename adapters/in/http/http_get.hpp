#pragma once
// One GET with libcurl: TLS always verified, redirects only to https on the same host, time-outs, a size limit, gzip.
// Plain http is refused but to a loopback address. The body's Content-Type comes back for the caller to check.
#include <string>
#include <vector>

#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

struct HttpRequest {
  std::string url;
  std::vector<std::string> headers;
  std::string user_agent;
  std::string ca_file;  // empty: the system's
  Period time_limit = std::chrono::seconds{120};
  std::size_t size_limit = 64u << 20;
};

struct HttpAnswer {
  int status = 0;
  std::string content_type, body;
};

[[nodiscard]] Result<HttpAnswer> http_get(const HttpRequest& request);

}  // namespace floatwright
