#pragma once
// Asks the web for many things at once with libcurl: connections kept and shared (HTTP/2 where it is offered), gzip,
// TLS always verified, redirects only to https on the same server, limits of time and size, a bounded number of tries.
// Plain http is refused but to a loopback address written as a number. What ran out of time is left to the next run.
#include <chrono>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "adapters/result.hpp"

namespace floatwright {

struct HttpRequest {
  std::string url;                         // https, or http to a loopback address
  std::vector<std::string> headers = {};   // "Accept: application/json"; not secret
  std::string secret_header = {};          // "X-Api-Key: ..."; in no message, and never sent to another server
  std::string body = {}, body_type = {};   // not empty: a POST with this Content-Type, safe to repeat
  std::vector<std::string> content_types = {};    // the type of an answer must contain one of these words; empty: any
  std::string etag = {}, last_modified = {};      // of what is held already: asks for it only if it has changed
  std::size_t tag = 0;                            // the caller's own
};

struct HttpAnswer {
  int status = 0;
  std::string content_type = {}, body = {};       // 304: no body
  std::string etag = {}, last_modified = {};
};

struct HttpManners {
  using Milliseconds = std::chrono::milliseconds;

  std::string user_agent = {};
  std::string ca_file = {};      // empty: the system's
  std::size_t connections = 8;   // requests under way at once, over all servers
  Milliseconds connect_limit = std::chrono::seconds{20};
  Milliseconds stall_limit = std::chrono::seconds{90};  // without a byte: a legacy service delays its answers by 60 s
  Milliseconds total_limit = std::chrono::seconds{300};  // of one try
  std::size_t size_limit = 64u << 20;                    // bytes of one answer, unpacked
  int most_tries = 3;
  Milliseconds first_wait = std::chrono::seconds{1};     // before the second try; doubled for each one more
  Milliseconds longest_wait = std::chrono::seconds{30};  // a server that wants more (Retry-After) is not asked again
  std::uint64_t jitter_seed = 1;                         // of the waits' random part: machines must not return together
};

// Calls `took` with each request's outcome as it ends, in no promised order; what it returns is asked next. Answers are
// 200, 206, 404 and, where it was asked for, 304. All else is a Failure: a sentence that begins with the address
// without its query. Requests to a server that was not reached are given up with the first of them, and with the third
// where it ran out of time.
void http_run(std::vector<HttpRequest> first, const HttpManners& manners,
              const std::function<std::vector<HttpRequest>(const HttpRequest&, Result<HttpAnswer>)>& took);

}  // namespace floatwright
