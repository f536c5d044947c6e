#pragma once
// Runs a program as a shell or cron would, with the environment and folder given and nothing else but where this build's
// tests keep fishing tables, and keeps what it said.
#include <filesystem>
#include <string>
#include <vector>

namespace floatwright::testing {

struct Ran {
  int exit_code = -1;  // 128 + signal when a signal ended it
  std::string out, err;
};

struct Where {
  std::vector<std::string> environment;           // "NAME=value"
  std::filesystem::path folder = "/";
};

[[nodiscard]] Ran run_program(const std::vector<std::string>& words, const Where& where = {});

// The floatwright program of this build with these words after it.
[[nodiscard]] Ran floatwright_says(std::vector<std::string> words, const Where& where = {});

// A fresh folder for one test, removed with everything in it at the end.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

[[nodiscard]] std::string text_of(const std::filesystem::path& file);
void write_text(const std::filesystem::path& file, const std::string& text);

}  // namespace floatwright::testing
