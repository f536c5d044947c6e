#include "adapters/cli/send.hpp"

#include <fmt/format.h>

#include <cstdlib>
#include <optional>

#include "adapters/cli/common_options.hpp"
#include "adapters/cli/day_letter.hpp"
#include "adapters/in/files/whole_text.hpp"
#include "adapters/out/mail/outbox.hpp"
#include "adapters/out/state/state_directory.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr const char* kPasswordVariable = "FLOATWRIGHT_MAIL_PASSWORD";

tl::unexpected<Failure> configuration_failure(std::string what) { return tl::unexpected(Failure{std::move(what), kExitConfiguration}); }

std::string set_in_environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

Result<std::string> password_of(const MailSettings& mail) {
  std::string password = set_in_environment(kPasswordVariable);
  std::string place = kPasswordVariable;
  if (password.empty() && !mail.password_file) {
    return configuration_failure(fmt::format(
        "settings.json: \"mail\" has the user {} but no password; put it alone into a file of mode 0600 and name that as "
        "\"password_file\", or set {}",
        mail.user, kPasswordVariable));
  }
  if (password.empty()) {
    place = mail.password_file->string();
    auto text = read_whole_text(*mail.password_file);
    if (!text) return tl::unexpected(text.error());
    password = std::move(*text);
  }
  while (password.ends_with('\n') || password.ends_with('\r')) password.pop_back();
  if (password.empty()) return configuration_failure(place + ": no password in it; write it there, alone on one line");
  if (password.find_first_of(std::string_view{"\r\n\0", 3}) != std::string::npos)
    return configuration_failure(place + ": more than one line; write the password there, alone on one line");
  return password;
}

Protection protection_of(const MailSettings& mail) {
  if (mail.unprotected) return Protection::None;
  return mail.to_loopback ? Protection::IfOffered : Protection::Required;
}

// SSL_CERT_FILE is where the TLS library itself looks for authorities (openssl-env(7)); curl does not ask it.
std::string authority_of(const MailSettings& mail) {
  return mail.ca_file ? mail.ca_file->string() : set_in_environment("SSL_CERT_FILE");
}

Result<MailServer> server_of(const MailSettings& mail) {
  MailServer server{.url = mail.server,
                    .protection = protection_of(mail),
                    .ca_file = authority_of(mail),
                    .user = mail.user,
                    .password = "",
                    .patience = mail.patience};
  if (mail.user.empty()) return server;
  return password_of(mail).map([&](std::string password) {
    server.password = std::move(password);
    return server;
  });
}

Letter test_letter(const Configuration& configuration, const MailSettings& mail, Instant now) {
  Letter letter;
  letter.from = mail.from;
  letter.to = mail.to;
  letter.subject = fmt::format("Test letter: {}", typed(configuration.river.name));
  letter.text = fmt::format(
      "This is a test of \"mail\" in settings.json: letters arrive. It holds no plan.\n\nRiver: {}\nServer: {}\n",
      typed(configuration.river.name), mail.server);
  letter.date = now;
  letter.message_id = message_id(letter);
  return letter;
}

}  // namespace

Result<MailSettings> mail_settings(const Configuration& configuration) {
  if (configuration.mail) return *configuration.mail;
  return configuration_failure(
      "settings.json: \"mail\" is missing, so nobody knows whom the mail is from and for; write\n"
      "  \"mail\": { \"from\": \"plan@example.org\", \"to\": \"wren@example.org\", \"server\": \"smtps://mail.example.org\" }\n"
      "with your own addresses and server");
}

Result<Post> post(const Configuration& configuration) {
  auto settings = mail_settings(configuration);
  if (!settings) return tl::unexpected(settings.error());
  auto server = server_of(*settings);
  if (!server) return tl::unexpected(server.error());
  return state_directory().map([&](const std::filesystem::path& state) {
    return Post{std::move(*settings), std::move(*server), state / "outbox"};
  });
}

int send_day(const Printed& day, const Post& post, std::chrono::year_month_day today) {
  const auto letter = day_letter(day);
  if (!letter) return tell(letter.error());
  const auto kept = put_in_outbox(post.outbox, *letter, day.boats.front().in.day);
  if (!kept) return tell(kept.error());
  const OutboxRun run = send_outbox(post.outbox, post.settings.from, post.server, today);
  for (const std::string& sentence : run.told) say_beside(sentence);
  return run.well ? kExitFresh : kExitTryLater;
}

int send_test_letter(const Configuration& configuration, Instant now) {
  const auto settings = mail_settings(configuration);
  if (!settings) return tell(settings.error());
  const auto server = server_of(*settings);
  if (!server) return tell(server.error());
  const Letter letter = test_letter(configuration, *settings, now);
  const Delivery delivery = deliver(as_eml(letter), {letter.from, letter.to}, *server, [] { return true; });
  for (const RefusedAddress& refused : delivery.refused) say_beside(fmt::format("{} is refused: {}", refused.address, refused.words));
  if (delivery.fate != Fate::Taken) return tell({fmt::format("{}: {}; the test letter was not delivered", server->url, without_stop(delivery.why)), kExitTryLater});
  if (!delivery.refused.empty()) return kExitTryLater;
  fmt::print("A test letter went to {} by way of {}.\n", fmt::join(letter.to, ", "), server->url);
  return kExitFresh;
}

}  // namespace floatwright
