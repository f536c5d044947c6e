#pragma once
// One letter to a mail server over SMTP with libcurl. Where there is TLS its certificate is checked; every wait has a limit.
#include <functional>
#include <string>
#include <vector>

#include "adapters/out/mail/conversation.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

enum class Protection {
  Required,   // no TLS, no letter
  IfOffered,  // for a server on this machine
  None        // others on the way can read it
};

struct MailServer {
  std::string url;                          // "smtp://host:port" (STARTTLS) or "smtps://host:port"
  Protection protection = Protection::Required;
  std::string ca_file{};                    // empty: the system's
  std::string user{}, password{};           // no user: no login
  Period patience = std::chrono::minutes{5};  // for one answer; RFC 5321 section 4.5.3.2 has 2 to 10 minutes, by command
};

struct Envelope {
  std::string from;
  std::vector<std::string> to;
};

// `before_end` is called once, before the last bytes of the letter go out; when it answers false the letter is broken off
// and so not delivered. From then on until the answer nobody but the server knows whether it has it.
[[nodiscard]] Delivery deliver(const std::string& eml, const Envelope& envelope, const MailServer& server,
                               const std::function<bool()>& before_end);

}  // namespace floatwright
