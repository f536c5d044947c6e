#pragma once
// JSON with comments (// and /* */) as a tree that knows on which line each value stands. Bad text of any kind, a key
// that stands twice, a number past what a double holds, or nesting past kDeepestNesting is a Problem with its line.
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/units/problem.hpp"

namespace floatwright {

enum class JsonKind { Null, Boolean, Number, Text, List, Object };

struct LocatedJson {
  JsonKind kind = JsonKind::Null;
  int line = 0;  // of the value; of the opening bracket for a list or an object
  bool boolean = false;
  double number = 0.0;  // always finite; an integer past 2^53 is rounded to a double
  std::string text;
  std::vector<LocatedJson> items;                            // of a list
  std::vector<std::pair<std::string, LocatedJson>> members;  // of an object, in the file's order, each key once
};

inline constexpr int kDeepestNesting = 64;

struct ParsedJson {
  std::optional<LocatedJson> root;  // none when the text could not be read to its end
  Problems problems;                // doubled keys are told though there is a root (the first of them is kept)
};

[[nodiscard]] ParsedJson parse_located_json(const std::string& file, std::string_view text);

// The line of what a JSON pointer names, or of the nearest thing above it that is there.
[[nodiscard]] int line_of(const LocatedJson& root, std::string_view pointer);

// One more step of a JSON pointer, with ~ and / written ~0 and ~1 (RFC 6901).
[[nodiscard]] std::string pointer_to(const std::string& parent, std::string_view key);
[[nodiscard]] std::string pointer_to(const std::string& parent, std::size_t index);

// What stands there, shortened, as it is named in a problem: "forty" in quotes, a number, "a list of 3".
[[nodiscard]] std::string describe(const LocatedJson& value);

}  // namespace floatwright
