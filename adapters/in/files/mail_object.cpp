#include "adapters/in/files/mail_object.hpp"

#include <algorithm>

namespace floatwright {
namespace {

// Catches a name typed for an address, no more: what is an address the server decides (RFC 5321 section 4.1.2).
bool looks_like_address(const std::string& address) {
  const std::size_t at = address.rfind('@');
  return at != std::string::npos && at > 0 && at + 1 < address.size() &&
         address.find_first_of(" <>,;") == std::string::npos;
}

void tell_bad_address(TypedObject& in, std::string_view key, const std::string& address) {
  if (looks_like_address(address)) return;
  in.tell(key, "\"" + address + "\"", "an address as \"wren@example.org\"", "Write the bare address, without a name.");
}

void tell_bad_server(TypedObject& in, const std::string& server) {
  const std::size_t scheme_ends = server.find("://");
  const std::string scheme = scheme_ends == std::string::npos ? "" : server.substr(0, scheme_ends);
  const bool has_host = scheme_ends != std::string::npos && scheme_ends + 3 < server.size();
  if ((scheme == "smtp" || scheme == "smtps") && has_host) return;
  in.tell("server", "\"" + server + "\"", "\"smtp://host:port\" or \"smtps://host:port\"",
          "Put smtp:// or smtps:// before the host.");
}

}  // namespace

std::optional<MailSettings> read_mail(TypedObject& settings) {
  auto in = settings.object("mail", Need::Optional);
  if (!in) return std::nullopt;
  MailSettings mail;
  // One address may stand without a list around it.
  const LocatedJson* to = in->find("to");
  const bool single = to != nullptr && to->kind == JsonKind::Text;
  mail.to = single ? std::vector{in->text("to", Need::Required)} : in->texts("to", Need::Required);
  if (to != nullptr && mail.to.empty())
    in->tell("to", describe(*to), "one address or more", "Write whom the mail is for.");
  for (const std::string& address : mail.to) tell_bad_address(*in, "to", address);
  mail.from = in->text("from", Need::Required);
  if (!mail.from.empty()) tell_bad_address(*in, "from", mail.from);
  mail.server = in->text("server", Need::Required);
  if (!mail.server.empty()) tell_bad_server(*in, mail.server);
  mail.user = in->text("user", Need::Optional);
  const std::string password_file = in->text("password_file", Need::Optional);
  if (!password_file.empty()) mail.password_file = password_file;
  in->finish();
  return mail;
}

}  // namespace floatwright
