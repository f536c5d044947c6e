#include "adapters/cli/progress_bar.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <utility>

namespace floatwright {

ProgressBar::ProgressBar(std::string what, bool wanted)
    : what_(std::move(what)), drawn_(wanted && ::isatty(STDERR_FILENO) == 1) {}

ProgressBar::~ProgressBar() {
  if (stands_) fmt::print(stderr, "\r{:{}}\r", "", what_.size() + 46);
}

void ProgressBar::show(std::size_t done, std::size_t of) {
  constexpr std::size_t kWidth = 30;
  if (!drawn_ || of == 0) return;
  const std::size_t full = kWidth * done / of;
  fmt::print(stderr, "\r{} [{}{}] {} of {}", what_, std::string(full, '#'), std::string(kWidth - full, ' '), done, of);
  stands_ = true;
}

}  // namespace floatwright
