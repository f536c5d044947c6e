#include "adapters/out/start/quoted.hpp"

#include <nlohmann/json.hpp>

namespace floatwright {

std::string on_one_line(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    const auto next = static_cast<unsigned char>(i + 1 < text.size() ? text[i + 1] : 0);
    const bool c1 = c == 0xC2 && next >= 0x80 && next < 0xA0;  // in UTF-8
    if (c1)
      ++i;
    else if (c >= 0x20 && c != 0x7F)
      out += text[i];
  }
  return out;
}

std::string quoted(const std::string& text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace floatwright
