#include <algorithm>
#include <charconv>

#include "adapters/in/files/located_json.hpp"

namespace floatwright {
namespace {

std::string unescaped(std::string_view token) {
  std::string plain;
  for (std::size_t i = 0; i < token.size(); ++i) {
    const bool escape = token[i] == '~' && i + 1 < token.size() && (token[i + 1] == '0' || token[i + 1] == '1');
    if (!escape) {
      plain += token[i];
      continue;
    }
    plain += token[i + 1] == '0' ? '~' : '/';
    ++i;
  }
  return plain;
}

const LocatedJson* step(const LocatedJson& from, const std::string& token) {
  for (const auto& [key, value] : from.members) {
    if (key == token) return &value;
  }
  std::size_t index = 0;
  const auto [end, error] = std::from_chars(token.data(), token.data() + token.size(), index);
  const bool is_index = error == std::errc{} && end == token.data() + token.size();
  return is_index && index < from.items.size() ? &from.items[index] : nullptr;
}

}  // namespace

int line_of(const LocatedJson& root, std::string_view pointer) {
  const LocatedJson* at = &root;
  while (!pointer.empty()) {
    pointer.remove_prefix(1);
    const std::size_t end = std::min(pointer.find('/'), pointer.size());
    const LocatedJson* next = step(*at, unescaped(pointer.substr(0, end)));
    if (next == nullptr) break;
    at = next;
    pointer.remove_prefix(end);
  }
  return at->line;
}

std::string pointer_to(const std::string& parent, std::string_view key) {
  std::string pointer = parent + "/";
  for (const char c : key) {
    if (c == '~') {
      pointer += "~0";
    } else if (c == '/') {
      pointer += "~1";
    } else {
      pointer += c;
    }
  }
  return pointer;
}

std::string pointer_to(const std::string& parent, std::size_t index) { return parent + "/" + std::to_string(index); }

}  // namespace floatwright
