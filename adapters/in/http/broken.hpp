#pragma once
// Why a try brought no answer, in words, and whether to try again.
#include <string>

#include "adapters/in/http/http_run.hpp"

namespace floatwright {

struct Broken {
  // GiveUpServer: other requests to it would fare alike. OutOfTime: they may.
  enum class Next { GiveUp, GiveUpServer, OutOfTime, TryAgain };
  std::string why;
  Next next = Next::GiveUp;
};

// What libcurl says of a try: its code, and what it found on the way.
struct BrokenTry {
  int code = 0;
  bool connected = false;
  long system_error = 0, certificate_error = 0;
  std::string detail = {};
};

[[nodiscard]] Broken broken(const BrokenTry& what, const HttpManners& manners);

// What libcurl does not see.
[[nodiscard]] Broken stalled(const HttpManners& manners);
[[nodiscard]] std::string too_long(const HttpManners& manners);

}  // namespace floatwright
