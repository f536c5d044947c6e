#include "adapters/in/gauges/text_place.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace floatwright {

std::string line_and_column(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, offset);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto line_start = before.rfind('\n') + 1;  // npos + 1 is 0
  return fmt::format("line {}, column {}", line, before.size() - line_start + 1);
}

}  // namespace floatwright
