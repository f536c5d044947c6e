#pragma once
// A document read back by a Python program that is not ours: what it printed, or why it could not be asked.
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <string>

namespace floatwright::testing {

// `script` reads the file named by its first argument. The interpreter is the one that Debian's packages belong to.
inline std::string read_back(const std::string& script, const std::string& document) {
  const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
  const std::string stem = std::string{FLOATWRIGHT_BINARY_DIR} + "/read_back_" + test->test_suite_name() + "_" + test->name();
  std::ofstream(stem + ".py", std::ios::binary) << script;
  std::ofstream(stem + ".txt", std::ios::binary) << document;
  FILE* pipe = popen(("/usr/bin/python3 '" + stem + ".py' '" + stem + ".txt' 2>&1").c_str(), "r");
  if (pipe == nullptr) return "python3 could not be started";
  std::string said;
  std::array<char, 512> part{};
  while (fgets(part.data(), static_cast<int>(part.size()), pipe) != nullptr) said += part.data();
  pclose(pipe);
  return said;
}

}  // namespace floatwright::testing
