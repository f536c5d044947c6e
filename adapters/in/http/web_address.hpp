#pragma once
// The parts of an address that decide whether it may be fetched.
#include <optional>
#include <string>

namespace floatwright {

struct WebAddress {
  std::string scheme, host, port;  // lower case; the port is the scheme's own where none is written
  bool names_user = false;         // "user:password@host"

  [[nodiscard]] std::string server() const { return scheme + "://" + host + ":" + port; }
};

[[nodiscard]] std::optional<WebAddress> web_address(const std::string& url);

// 127.x.x.x or ::1 as written; a name is not, since it may mean any machine.
[[nodiscard]] bool is_loopback(const std::string& host);

// `href` as it stands on a page at `base`; none where the two make no address.
[[nodiscard]] std::optional<std::string> resolved(const std::string& base, const std::string& href);

// Why `url` may not be fetched, with what to do; `from`: the address that redirected to it, else empty.
[[nodiscard]] std::optional<std::string> why_not_fetched(const std::string& url, const std::string& from);

// For messages: what follows "?" may hold a key, and what stands before "@" a password.
[[nodiscard]] std::string without_query(const std::string& url);

}  // namespace floatwright
