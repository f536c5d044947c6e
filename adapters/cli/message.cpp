#include "adapters/cli/message.hpp"

#include <date/date.h>
#include <fmt/format.h>
#include <unistd.h>

#include <chrono>

namespace floatwright {

void say_beside(const std::string& sentence) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  const std::string time = ::isatty(STDERR_FILENO) == 1 ? "" : date::format("%FT%TZ ", now);
  fmt::print(stderr, "{}floatwright: {}\n", time, sentence);
}

int tell(const Failure& failure) {
  say_beside(failure.what);
  return failure.exit_code;
}

}  // namespace floatwright
