#pragma once
// What the readers of gauge answers are timed on: a row as the service was recorded to write it, repeated with times of
// its own. To add a reader: its line in parser_cases.cpp.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

struct ParserCase {
  std::string name;
  std::string (*bytes)(std::size_t about) = nullptr;           // a text of about so many bytes
  std::size_t (*rows_read)(std::string_view bytes) = nullptr;  // 0: not read
  bool (*bare)(std::string_view bytes) = nullptr;              // the plain parser that it is held against
  double least_ratio = 0.7;                                    // of the bare parser's speed
  double most_memory_mb = 32.0;                                // beyond the text
};

[[nodiscard]] const std::vector<ParserCase>& parser_cases();

// Calls nothing, keeps nothing.
[[nodiscard]] bool bare_json(std::string_view bytes);
[[nodiscard]] bool bare_xml(std::string_view bytes);

}  // namespace floatwright
