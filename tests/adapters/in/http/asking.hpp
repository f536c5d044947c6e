#pragma once
// One request, or several, with limits short enough for a test.
#include <string>
#include <utility>
#include <vector>

#include "adapters/in/http/http_run.hpp"

namespace floatwright {

inline HttpManners quick_manners() {
  using namespace std::chrono_literals;
  return {.user_agent = "floatwright-test",
          .connect_limit = 2s,
          .stall_limit = 2s,
          .total_limit = 5s,
          .first_wait = 1ms,
          .longest_wait = 20ms};
}

// What came of each, in the order in which they ended.
inline std::vector<std::pair<std::string, Result<HttpAnswer>>> outcomes(
    std::vector<HttpRequest> requests, const HttpManners& manners = quick_manners()) {
  std::vector<std::pair<std::string, Result<HttpAnswer>>> out;
  http_run(std::move(requests), manners, [&](const HttpRequest& request, Result<HttpAnswer> answer) {
    out.emplace_back(request.url, std::move(answer));
    return std::vector<HttpRequest>{};
  });
  return out;
}

inline Result<HttpAnswer> outcome(const HttpRequest& request, const HttpManners& manners = quick_manners()) {
  auto all = outcomes({request}, manners);
  if (all.size() == 1) return std::move(all.front().second);
  return tl::unexpected(Failure{std::to_string(all.size()) + " outcomes of one request"});
}

// "200 {}", or why not.
inline std::string told(const HttpRequest& request, const HttpManners& manners = quick_manners()) {
  const auto answer = outcome(request, manners);
  return answer ? std::to_string(answer->status) + " " + answer->body : answer.error().what;
}

}  // namespace floatwright
