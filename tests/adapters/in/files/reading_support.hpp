#pragma once
// Reads a text as a file would be read, for tests.
#include <gmock/gmock.h>

#include <string>

#include "adapters/in/files/typed_object.hpp"

namespace floatwright {

// The reader's answer for one text, with what it found wrong.
template <class T>
struct ReadAnswer {
  T value{};
  Problems problems;
};

template <class Reader>
auto read_text(const std::string& text, Reader reader) {
  FileReading reading{"test.json", {}, {}};
  ParsedJson parsed = parse_located_json(reading.file, text);
  reading.problems = parsed.problems;
  using Value = decltype(reader(*parsed.root, reading));
  ReadAnswer<Value> answer;
  if (parsed.root) answer.value = reader(*parsed.root, reading);
  answer.problems = reading.problems;
  return answer;
}

MATCHER_P2(StandsAt, line, pointer, "") { return arg.line == line && arg.pointer == pointer; }
MATCHER_P(Finds, words, "") { return arg.found.find(words) != std::string::npos; }
MATCHER_P(Mends, words, "") { return arg.mend.find(words) != std::string::npos; }

inline void PrintTo(const Problem& problem, std::ostream* out) {
  *out << problem.file << ":" << problem.line << ": " << problem.pointer << ": " << problem.found << "; "
       << problem.allowed << "; " << problem.mend;
}

}  // namespace floatwright
