#pragma once
// One GET with libcurl: TLS always verified, redirects only to https on the same host, time-outs, a size limit, gzip.
// Plain http is refused but to a loopback address written as a number (there a redirect stays on its port). The body's
// Content-Type comes back for the caller to check; a status of 400 and over is an answer, not a failure.
#include <string>
#include <vector>

#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

struct HttpRequest {
  std::string url;
  std::vector<std::string> headers;
  std::string user_agent;
  std::string ca_file;                            // empty: the system's
  Period time_limit = std::chrono::seconds{120};  // of one request; a redirect is another
  std::size_t size_limit = 64u << 20;             // bytes, unpacked
};

struct HttpAnswer {
  int status = 0;
  std::string content_type, body;
};

[[nodiscard]] Result<HttpAnswer> http_get(const HttpRequest& request);

}  // namespace floatwright
