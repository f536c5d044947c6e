#pragma once
// How letters leave: the "mail" object of settings.json. The password itself stays in its file.
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/units/instant.hpp"

namespace floatwright {

// What a person writes as "unprotected" to send without TLS over a network.
inline constexpr std::string_view kUnprotectedWords = "I know that anybody on the way can read it";

struct MailSettings {
  std::vector<std::string> to;
  std::string from;
  std::string server;           // "smtp://host:port" or "smtps://host:port"
  bool to_loopback = false;     // the server is this machine, by a number: TLS may be missing
  bool unprotected = false;     // said in words: no TLS at all
  std::optional<std::filesystem::path> ca_file;  // the authority of the server's certificate; none: the system's
  std::string user;             // may be empty: no login
  std::optional<std::filesystem::path> password_file;
  Period patience = std::chrono::minutes{5};     // for one answer of the server
};

}  // namespace floatwright
