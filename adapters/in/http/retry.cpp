#include "adapters/in/http/retry.hpp"

#include <curl/curl.h>

#include <algorithm>
#include <cstdlib>

namespace floatwright {

std::optional<std::chrono::seconds> asked_wait(const std::string& retry_after, const std::string& date) {
  constexpr std::size_t kMostDigits = 9;  // thirty years, which is as good as any longer
  if (retry_after.empty()) return std::nullopt;
  if (retry_after.find_first_not_of("0123456789") == std::string::npos) {
    const bool long_enough = retry_after.size() > kMostDigits;
    return std::chrono::seconds{long_enough ? 999'999'999 : std::atol(retry_after.c_str())};
  }
  const std::time_t until = curl_getdate(retry_after.c_str(), nullptr), from = curl_getdate(date.c_str(), nullptr);
  if (until == -1 || from == -1) return std::nullopt;
  return std::chrono::seconds{std::max<std::time_t>(0, until - from)};
}

std::chrono::milliseconds own_wait(int tries_made, double jitter, std::chrono::milliseconds first,
                                   std::chrono::milliseconds longest) {
  const double doubled = static_cast<double>(first.count()) * static_cast<double>(1 << std::min(tries_made - 1, 20));
  const double wait = doubled * (0.5 + jitter);
  return std::min(longest, std::chrono::milliseconds{static_cast<std::chrono::milliseconds::rep>(wait)});
}

}  // namespace floatwright
