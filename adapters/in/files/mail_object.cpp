#include "adapters/in/files/mail_object.hpp"

#include <algorithm>

#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kLongestAddress = 254;  // RFC 5321 section 4.5.3.1.3, from memory: a path of 256 with its brackets
constexpr int kLongestPatience = 3600;        // judgement: no server thinks for an hour

// Catches a name typed for an address, no more: what is an address the server decides (RFC 5321 section 4.1.2).
bool looks_like_address(const std::string& address) {
  const std::size_t at = address.rfind('@');
  const bool plain = std::ranges::all_of(address, [](char c) { return c > ' ' && c <= '~'; });
  return at != std::string::npos && at > 0 && at + 1 < address.size() && address.size() <= kLongestAddress && plain &&
         address.find_first_of("<>,;") == std::string::npos;
}

void tell_bad_address(TypedObject& in, std::string_view key, const std::string& address) {
  if (looks_like_address(address)) return;
  in.tell(key, "\"" + address + "\"", "an address as \"wren@example.org\", in plain letters (ASCII)",
          "Write the bare address, without a name; a domain of other letters in its xn-- form.");
}

std::vector<std::string> read_to(TypedObject& in) {
  // One address may stand without a list around it.
  const LocatedJson* to = in.find("to");
  const bool single = to != nullptr && to->kind == JsonKind::Text;
  std::vector<std::string> all = single ? std::vector{in.text("to", Need::Required)} : in.texts("to", Need::Required);
  std::erase(all, "");  // told already
  if (to != nullptr && all.empty()) in.tell("to", describe(*to), "one address or more", "Write whom the mail is for.");
  for (const std::string& address : all) tell_bad_address(in, "to", address);
  return all;
}

// A scheme, a host and a port; a password has no place here.
std::optional<WebAddress> server_address(const std::string& server) {
  const auto address = web_address(server);
  if (!address || address->host.empty() || (address->scheme != "smtp" && address->scheme != "smtps")) return std::nullopt;
  const std::size_t host = server.find("://");
  if (host == std::string::npos || server.find_first_of("/@?#", host + 3) != std::string::npos) return std::nullopt;
  return address;
}

void read_server(TypedObject& in, MailSettings& mail) {
  mail.server = in.text("server", Need::Required);
  const std::string words = in.text("unprotected", Need::Optional);
  mail.unprotected = words == kUnprotectedWords;
  if (!words.empty() && !mail.unprotected) {
    in.tell("unprotected", "\"" + words + "\"", "\"" + std::string{kUnprotectedWords} + "\", word for word",
            "Write it so to send without TLS, or take the key away.");
  }
  if (mail.server.empty()) return;
  const auto address = server_address(mail.server);
  if (!address) {
    in.tell("server", "\"" + mail.server + "\"", "\"smtp://host:port\" or \"smtps://host:port\"",
            "Put smtp:// or smtps:// before the host, and nothing behind its port.");
    return;
  }
  mail.to_loopback = is_loopback(address->host);
  if (mail.unprotected && address->scheme == "smtps") {
    in.tell("unprotected", "it beside a server of smtps://", "one of the two", "Take the key away: smtps:// is protected.");
  }
}

void read_login(TypedObject& in, MailSettings& mail) {
  mail.user = in.text("user", Need::Optional);
  const std::string password_file = in.text("password_file", Need::Optional);
  if (!password_file.empty()) mail.password_file = password_file;
  if (!mail.password_file && mail.user.empty()) return;
  if (mail.user.empty()) in.tell("password_file", "a password without \"user\"", "both or none", "Write whose password it is.");
  if (mail.unprotected && !mail.to_loopback) {
    in.tell("unprotected", "it beside a login", "a login over TLS only",
            "Take \"unprotected\" away, or \"user\" and \"password_file\".");
  }
}

}  // namespace

std::optional<MailSettings> read_mail(TypedObject& settings) {
  auto in = settings.object("mail", Need::Optional);
  if (!in) return std::nullopt;
  MailSettings mail;
  mail.to = read_to(*in);
  mail.from = in->text("from", Need::Required);
  if (!mail.from.empty()) tell_bad_address(*in, "from", mail.from);
  read_server(*in, mail);
  read_login(*in, mail);
  const std::string ca_file = in->text("ca_file", Need::Optional);
  if (!ca_file.empty()) mail.ca_file = ca_file;
  if (const auto seconds = in->whole_number("patience_s", 1, kLongestPatience, Need::Optional)) mail.patience = Period{*seconds};
  in->finish();
  return mail;
}

}  // namespace floatwright
