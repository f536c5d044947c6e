#pragma once
// "1,290" from "1290", as people read it.
#include <algorithm>
#include <string>

namespace floatwright {

[[nodiscard]] inline std::string with_commas(const std::string& digits) {
  const std::size_t whole = std::min(digits.find('.'), digits.size());
  std::string out = digits.substr(whole);
  for (std::size_t taken = 0; taken < whole; ++taken) {
    const char digit = digits[whole - 1 - taken];
    if (taken > 0 && taken % 3 == 0 && digit != '-') out.insert(out.begin(), ',');
    out.insert(out.begin(), digit);
  }
  return out;
}

}  // namespace floatwright
