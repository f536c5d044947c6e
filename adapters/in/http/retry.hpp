#pragma once
// How long to wait before a request is tried again.
#include <chrono>
#include <optional>
#include <string>

namespace floatwright {

// What Retry-After asks for (RFC 9110, 10.2.3): seconds, or a date, which is held against the answer's own Date, since
// this machine's clock may be wrong. None: not asked, or not to be understood.
[[nodiscard]] std::optional<std::chrono::seconds> asked_wait(const std::string& retry_after, const std::string& date);

// The wait doubles with each try, and `jitter` from 0 to 1 makes it half to one and a half of that.
[[nodiscard]] std::chrono::milliseconds own_wait(int tries_made, double jitter, std::chrono::milliseconds first,
                                                 std::chrono::milliseconds longest);

}  // namespace floatwright
