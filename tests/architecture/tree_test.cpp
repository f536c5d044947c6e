// What a stranger relies on in the tree: the agreed names at the top, files of a readable size, one way to start a header.
#include <gtest/gtest.h>

#include <set>

#include "tests/architecture/source_tree.hpp"

namespace floatwright::testing {
namespace {

constexpr std::size_t kLongestFile = 400;

TEST(Tree, HasOnlyTheAgreedNamesAtTheTop) {
  const std::set<std::string> agreed{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "engine", "adapters",
                                     "tests",          "fixtures",  "config",        "docs",   "build"};
  for (const auto& entry : std::filesystem::directory_iterator(FLOATWRIGHT_SOURCE_DIR)) {
    const auto name = entry.path().filename().string();
    EXPECT_TRUE(name.starts_with(".") || agreed.contains(name)) << name;
  }
}

TEST(Tree, HasNoFileTooLongToRead) {
  for (const auto& folder : {"engine", "adapters", "tests"}) {
    for (const auto& file : sources_below(folder)) EXPECT_LE(file.lines.size(), kLongestFile) << file.path;
  }
}

TEST(Tree, StartsEveryHeaderWithPragmaOnceAndAWord) {
  for (const auto& folder : {"engine", "adapters"}) {
    for (const auto& file : sources_below(folder)) {
      if (!file.path.ends_with(".hpp")) continue;
      ASSERT_GE(file.lines.size(), 2u) << file.path;
      EXPECT_EQ(file.lines[0], "#pragma once") << file.path;
      EXPECT_TRUE(file.lines[1].starts_with("// ")) << file.path << ": the second line says what the header is for";
    }
  }
}

}  // namespace
}  // namespace floatwright::testing
