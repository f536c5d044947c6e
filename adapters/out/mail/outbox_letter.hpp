#pragma once
// A letter that waits to be delivered, as a file: the letter's own bytes under a few header fields of ours, so that any
// mail reader opens it. The fields are taken off again before it goes out.
#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/out/mail/letter.hpp"

namespace floatwright {

struct OutboxLetter {
  std::string from;
  std::vector<std::string> to;        // those who have not got it
  std::chrono::year_month_day day{};  // the day it speaks of; after it nobody wants it
  int unanswered = 0;                 // times it went out whole and no answer came
  std::string eml;
};

// Sorted by name, letters stand in the order of their days and of their making.
[[nodiscard]] std::string outbox_name(const Letter& letter, std::chrono::year_month_day day);

[[nodiscard]] OutboxLetter outbox_letter(const Letter& letter, std::chrono::year_month_day day);

[[nodiscard]] std::string outbox_text(const OutboxLetter& letter);
[[nodiscard]] std::optional<OutboxLetter> read_outbox_text(std::string_view text);

}  // namespace floatwright
