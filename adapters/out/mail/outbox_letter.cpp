#include "adapters/out/mail/outbox_letter.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <charconv>
#include <map>
#include <sstream>

namespace floatwright {
namespace {

constexpr std::string_view kLineEnd = "\r\n";
constexpr std::string_view kField = "Outbox-";

std::string written(std::chrono::year_month_day day) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

std::optional<int> count_in(std::string_view text) {
  int count = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
  if (error != std::errc{} || end != text.data() + text.size() || count < 0) return std::nullopt;
  return count;
}

std::optional<std::chrono::year_month_day> day_in(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = count_in(text.substr(0, 4)), month = count_in(text.substr(5, 2)), day = count_in(text.substr(8));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day all{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                        std::chrono::day{static_cast<unsigned>(*day)}};
  return all.ok() ? std::optional{all} : std::nullopt;
}

std::vector<std::string> addresses_in(const std::string& text) {
  std::vector<std::string> all;
  std::istringstream in{text};
  for (std::string address; std::getline(in >> std::ws, address, ',');) all.push_back(address);
  return all;
}

// Takes the fields off the front of `text`.
std::map<std::string, std::string> taken_fields(std::string_view& text) {
  std::map<std::string, std::string> fields;
  while (text.starts_with(kField)) {
    const auto end = text.find(kLineEnd), colon = text.find(": ");
    if (end == std::string_view::npos || colon > end) break;
    fields[std::string{text.substr(0, colon)}] = text.substr(colon + 2, end - colon - 2);
    text.remove_prefix(end + kLineEnd.size());
  }
  return fields;
}

}  // namespace

std::string outbox_name(const Letter& letter, std::chrono::year_month_day day) {
  const auto made = date::format("%Y%m%dT%H%M%SZ", date::sys_seconds{letter.date.time_since_epoch()});
  return fmt::format("{}-made-{}-{}.eml", written(day), made, letter.message_id.substr(0, 12));
}

OutboxLetter outbox_letter(const Letter& letter, std::chrono::year_month_day day) {
  return {.from = letter.from, .to = letter.to, .day = day, .unanswered = 0, .eml = as_eml(letter)};
}

std::string outbox_text(const OutboxLetter& letter) {
  return fmt::format("Outbox-From: {}\r\nOutbox-To: {}\r\nOutbox-Day: {}\r\nOutbox-Unanswered: {}\r\n{}", letter.from,
                     fmt::join(letter.to, ", "), written(letter.day), letter.unanswered, letter.eml);
}

std::optional<OutboxLetter> read_outbox_text(std::string_view text) {
  auto fields = taken_fields(text);
  const auto day = day_in(fields["Outbox-Day"]);
  const auto unanswered = count_in(fields["Outbox-Unanswered"]);
  OutboxLetter letter{.from = fields["Outbox-From"],
                      .to = addresses_in(fields["Outbox-To"]),
                      .day = day.value_or(std::chrono::year_month_day{}),
                      .unanswered = unanswered.value_or(0),
                      .eml = std::string{text}};
  if (!day || !unanswered || letter.from.empty() || letter.to.empty() || letter.eml.empty()) return std::nullopt;
  return letter;
}

}  // namespace floatwright
