#pragma once
// How letters leave: the "mail" object of settings.json. The password itself stays in its file.
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace floatwright {

struct MailSettings {
  std::vector<std::string> to;
  std::string from;
  std::string server;  // "smtp://host:port" or "smtps://host:port"
  std::string user;    // may be empty: no login
  std::optional<std::filesystem::path> password_file;
};

}  // namespace floatwright
