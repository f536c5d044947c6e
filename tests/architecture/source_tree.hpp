#pragma once
// The project's own sources as text: files by path from the root, and what each includes.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

namespace floatwright::testing {

struct SourceFile {
  std::string path;  // from the root
  std::vector<std::string> lines;
  std::vector<std::string> own_includes;     // "..."
  std::vector<std::string> system_includes;  // <...>
};

inline SourceFile source_file(const std::filesystem::path& root, const std::filesystem::path& path) {
  SourceFile file{std::filesystem::relative(path, root).string(), {}, {}, {}};
  static const std::regex include{R"re(^\s*#\s*include\s*(["<])([^">]+)[">])re"};
  std::ifstream in{path};
  for (std::string line; std::getline(in, line);) {
    std::smatch match;
    if (std::regex_search(line, match, include)) {
      (match[1] == "\"" ? file.own_includes : file.system_includes).push_back(match[2]);
    }
    file.lines.push_back(line);
  }
  return file;
}

inline std::vector<SourceFile> sources_below(const std::string& folder) {
  const std::filesystem::path root{FLOATWRIGHT_SOURCE_DIR};
  std::vector<SourceFile> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
    const auto extension = entry.path().extension();
    if (extension == ".hpp" || extension == ".cpp") files.push_back(source_file(root, entry.path()));
  }
  std::ranges::sort(files, {}, &SourceFile::path);
  return files;
}

}  // namespace floatwright::testing
