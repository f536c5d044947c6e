#include "adapters/out/mail/deliver.hpp"

#include <curl/curl.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <memory>

#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr long kMostConnectSeconds = 30;
constexpr long kMostAnswers = 4;  // as long as so many full waits may a whole letter take

struct CurlEnd {
  void operator()(CURL* curl) const { curl_easy_cleanup(curl); }
  void operator()(curl_slist* list) const { curl_slist_free_all(list); }
};
using Curl = std::unique_ptr<CURL, CurlEnd>;
using Addresses = std::unique_ptr<curl_slist, CurlEnd>;

struct Sending {
  const std::string& bytes;
  const std::function<bool()>& before_end;
  std::size_t sent = 0;
  Conversation conversation{};
};

// Marks the end before it hands out the last bytes: curl need not ask again for the nothing behind them.
std::size_t hand_over(char* into, std::size_t size, std::size_t count, void* user) {
  auto& sending = *static_cast<Sending*>(user);
  const std::size_t left = sending.bytes.size() - sending.sent, now = std::min(left, size * count);
  if (now == left && !sending.conversation.letter_ended()) {
    if (!sending.before_end()) return CURL_READFUNC_ABORT;
    sending.conversation.letter_ends();
  }
  std::memcpy(into, sending.bytes.data() + sending.sent, now);
  sending.sent += now;
  return now;
}

int listen(CURL*, curl_infotype type, char* data, std::size_t size, void* user) {
  auto& conversation = static_cast<Sending*>(user)->conversation;
  const std::string_view line{data, size};
  if (type == CURLINFO_HEADER_OUT) conversation.we_say(line);
  if (type == CURLINFO_HEADER_IN) conversation.server_says(line);
  return 0;
}

Addresses listed(const std::vector<std::string>& to) {
  Addresses list;
  for (const std::string& address : to) {
    curl_slist* const longer = curl_slist_append(list.get(), ("<" + address + ">").c_str());
    if (longer == nullptr) return nullptr;
    list.release();
    list.reset(longer);
  }
  return list;
}

long how_protected(Protection protection) {
  if (protection == Protection::None) return CURLUSESSL_NONE;
  return protection == Protection::IfOffered ? CURLUSESSL_TRY : CURLUSESSL_ALL;
}

void set_protection(CURL* curl, const MailServer& server) {
  curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "smtp,smtps");
  curl_easy_setopt(curl, CURLOPT_USE_SSL, how_protected(server.protection));
  curl_easy_setopt(curl, CURLOPT_SSLVERSION, static_cast<long>(CURL_SSLVERSION_TLSv1_2));
  if (!server.ca_file.empty()) curl_easy_setopt(curl, CURLOPT_CAINFO, server.ca_file.c_str());
  if (server.user.empty()) return;
  curl_easy_setopt(curl, CURLOPT_USERNAME, server.user.c_str());
  curl_easy_setopt(curl, CURLOPT_PASSWORD, server.password.c_str());
}

void set_limits(CURL* curl, Period patience) {
  const long seconds = std::max(1L, static_cast<long>(patience.count()));
  curl_easy_setopt(curl, CURLOPT_NOSIGNAL, 1L);
  curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT, std::min(seconds, kMostConnectSeconds));
  curl_easy_setopt(curl, CURLOPT_SERVER_RESPONSE_TIMEOUT, seconds);
  curl_easy_setopt(curl, CURLOPT_LOW_SPEED_LIMIT, 1L);
  curl_easy_setopt(curl, CURLOPT_LOW_SPEED_TIME, seconds);
  curl_easy_setopt(curl, CURLOPT_TIMEOUT, kMostAnswers * seconds);
}

void set_letter(CURL* curl, const std::string& from, curl_slist* to, Sending& sending, char* error_text) {
  curl_easy_setopt(curl, CURLOPT_MAIL_FROM, ("<" + from + ">").c_str());
  curl_easy_setopt(curl, CURLOPT_MAIL_RCPT, to);
  curl_easy_setopt(curl, CURLOPT_MAIL_RCPT_ALLLOWFAILS, 1L);  // one bad address keeps the letter from nobody else
  curl_easy_setopt(curl, CURLOPT_UPLOAD, 1L);
  curl_easy_setopt(curl, CURLOPT_READFUNCTION, hand_over);
  curl_easy_setopt(curl, CURLOPT_READDATA, &sending);
  curl_easy_setopt(curl, CURLOPT_INFILESIZE_LARGE, static_cast<curl_off_t>(sending.bytes.size()));
  curl_easy_setopt(curl, CURLOPT_VERBOSE, 1L);  // calls `listen`; prints nothing
  curl_easy_setopt(curl, CURLOPT_DEBUGFUNCTION, listen);
  curl_easy_setopt(curl, CURLOPT_DEBUGDATA, &sending);
  curl_easy_setopt(curl, CURLOPT_ERRORBUFFER, error_text);
}

std::string trouble(CURLcode code, const MailServer& server, const char* error_text) {
  const std::string detail = typed(*error_text != '\0' ? error_text : curl_easy_strerror(code));
  switch (code) {
    case CURLE_OPERATION_TIMEDOUT:
      return fmt::format("no answer in time ({}; one is awaited for {} s)", detail, server.patience.count());
    case CURLE_PEER_FAILED_VERIFICATION:
      return fmt::format("its certificate is not good ({}); if it is your own server's, name the certificate of its authority "
                         "in settings.json as \"ca_file\" of \"mail\"",
                         detail);
    case CURLE_USE_SSL_FAILED:
      return fmt::format("it offers no protection by STARTTLS ({}); write smtps:// if it speaks TLS from the start", detail);
    case CURLE_LOGIN_DENIED:
      return fmt::format("it does not let the user in ({}); see \"user\" and the password", detail);
    default: return detail;
  }
}

}  // namespace

Delivery deliver(const std::string& eml, const Envelope& envelope, const MailServer& server,
                 const std::function<bool()>& before_end) {
  static const CURLcode kReady = curl_global_init(CURL_GLOBAL_DEFAULT);
  const Addresses to = listed(envelope.to);
  Sending sending{.bytes = eml, .before_end = before_end};
  std::array<char, CURL_ERROR_SIZE> error_text{};
  // Behind what it writes to: it still takes leave of the server when it ends.
  const Curl curl{kReady == CURLE_OK ? curl_easy_init() : nullptr};
  if (!curl || !to) return outcome(sending.conversation, false, "the mail library can't be started");

  curl_easy_setopt(curl.get(), CURLOPT_URL, server.url.c_str());
  set_protection(curl.get(), server);
  set_limits(curl.get(), server.patience);
  set_letter(curl.get(), envelope.from, to.get(), sending, error_text.data());
  const CURLcode code = curl_easy_perform(curl.get());
  return outcome(sending.conversation, code == CURLE_OK, trouble(code, server, error_text.data()));
}

}  // namespace floatwright
