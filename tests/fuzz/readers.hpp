#pragma once
// Every reader of bytes from outside, by name, as one table for the fuzzer. To add one: its line in readers.cpp.
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

struct FuzzedReader {
  std::string name;
  // What is wrong with what it made of the bytes, a sentence; empty: a Failure told as it should be, or sound values.
  std::string (*fault)(const std::string& name, std::string_view bytes) = nullptr;
};

[[nodiscard]] const std::vector<FuzzedReader>& fuzzed_readers();

}  // namespace floatwright
