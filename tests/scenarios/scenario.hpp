#pragma once
// A whole run of the program on a configuration that a test may change first.
#include <filesystem>
#include <string>
#include <vector>

#include "tests/support/run_program.hpp"

namespace floatwright::testing {

inline const std::filesystem::path kRoot{FLOATWRIGHT_SOURCE_DIR};
inline const std::string kDemoNow = "2027-05-13T19:50:00-06:00";

// The demo's configuration and payloads copied into a scratch folder, so that a test can break them. Its mail server is
// left out: a test that mails names one of its own.
class DemoCopy {
 public:
  DemoCopy() {
    std::filesystem::copy(kRoot / "config/demo", scratch_.path() / "config");
    std::filesystem::copy(kRoot / "fixtures/lantern/payloads", scratch_.path() / "payloads");
    replace("settings.json", "../../fixtures/lantern/payloads", "../payloads");
    replace("settings.json", "../../build/demo-archive", "../archive");
    replace("settings.json", R"(,
  "mail": { "from": "wren@example.org", "to": "wren@example.org", "server": "smtp://127.0.0.1:25" })", "");
  }
  [[nodiscard]] std::filesystem::path config() const { return scratch_.path() / "config"; }
  [[nodiscard]] std::filesystem::path payloads() const { return scratch_.path() / "payloads"; }
  [[nodiscard]] std::filesystem::path folder() const { return scratch_.path(); }

  // Replaces the first `from` in a configuration file; a test that no longer meets its file throws.
  void replace(const std::string& file, const std::string& from, const std::string& to) const {
    auto text = text_of(config() / file);
    const auto at = text.find(from);
    if (at == std::string::npos) throw std::runtime_error(file + " has no " + from);
    write_text(config() / file, text.replace(at, from.size(), to));
  }

  [[nodiscard]] Ran plan(std::vector<std::string> more = {}, const Where& where = {}) const {
    std::vector<std::string> words{"plan", "--config", config().string(), "--offline", "--now", kDemoNow};
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words, where);
  }
  [[nodiscard]] Ran check() const { return floatwright_says({"check", "--config", config().string()}); }

 private:
  ScratchFolder scratch_;
};

}  // namespace floatwright::testing
