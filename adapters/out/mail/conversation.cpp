#include "adapters/out/mail/conversation.hpp"

#include <algorithm>
#include <iterator>

#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr int kLoginWanted = 530;  // RFC 4954 section 6, from memory: it is the login that is missing, not the letter that is bad
constexpr std::string_view kLetter = "the letter";

int code_of(std::string_view line) {
  int code = 0;
  if (line.size() < 3) return 0;
  for (const char c : line.substr(0, 3)) {
    if (c < '0' || c > '9') return 0;
    code = code * 10 + (c - '0');
  }
  return code;
}

bool is_permanent(int code) { return code >= 500 && code < 600 && code != kLoginWanted; }

bool concerns_letter(const Exchange& exchange) {
  return exchange.command.starts_with("MAIL FROM:") || exchange.command.starts_with("RCPT TO:") ||
         exchange.command == "DATA" || exchange.command == kLetter;
}

std::string address_in(const std::string& command) {
  const auto from = command.find('<'), to = command.rfind('>');
  return from == std::string::npos || to == std::string::npos || to < from ? "" : command.substr(from + 1, to - from - 1);
}

std::vector<RefusedAddress> refused_by_themselves(const std::vector<Exchange>& said) {
  std::vector<RefusedAddress> refused;
  for (const Exchange& exchange : said) {
    if (exchange.command.starts_with("RCPT TO:") && exchange.code >= 400)
      refused.push_back({address_in(exchange.command), exchange.words, is_permanent(exchange.code)});
  }
  return refused;
}

// What decides: the answer to the letter itself, else the newest before we took leave.
const Exchange& deciding(const std::vector<Exchange>& said) {
  const auto letter = std::ranges::find(said, kLetter, &Exchange::command);
  if (letter != said.end()) return *letter;
  const auto newest = std::find_if(said.rbegin(), said.rend(), [](const Exchange& one) { return one.command != "QUIT"; });
  return newest == said.rend() ? said.front() : *newest;
}

}  // namespace

void Conversation::we_say(std::string_view line) {
  while (line.ends_with('\n') || line.ends_with('\r')) line.remove_suffix(1);
  said_.push_back({std::string{line}, 0, ""});
}

void Conversation::server_says(std::string_view line) {
  Exchange& now = said_.back();
  // The lines of one reply repeat its code; "-" behind it says that more follow.
  if (now.code != 0 && (line.size() < 4 || code_of(line) != now.code)) return;
  const bool first = now.code == 0;
  now.code = code_of(line);
  if (!first) now.words += ' ';
  now.words += typed(first ? line : line.substr(4));
}

void Conversation::letter_ends() {
  if (ended_) return;
  ended_ = true;
  said_.push_back({std::string{kLetter}, 0, ""});
}

Delivery outcome(const Conversation& conversation, bool taken, const std::string& trouble) {
  const auto& said = conversation.said();
  const Exchange& answered = deciding(said);
  Delivery delivery;
  delivery.reached = std::ranges::any_of(said, concerns_letter) && answered.code != kLoginWanted;
  delivery.refused = refused_by_themselves(said);
  if (taken) {
    delivery.fate = Fate::Taken;
    return delivery;
  }
  const bool refused = answered.code >= 400;
  delivery.why = refused ? answered.words : trouble;
  if (concerns_letter(answered) && is_permanent(answered.code)) delivery.fate = Fate::Refused;
  if (conversation.letter_ended() && !refused) delivery.fate = Fate::Unknown;
  return delivery;
}

}  // namespace floatwright
