#include "adapters/in/files/calendar_text.hpp"

namespace floatwright {
namespace {

// The digits where the shape has 9, when all else is as in the shape: "9999-99-99".
std::optional<std::string> digits_of(std::string_view text, std::string_view shape) {
  if (text.size() != shape.size()) return std::nullopt;
  std::string digits;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_digit = text[i] >= '0' && text[i] <= '9';
    if (shape[i] == '9' ? !is_digit : text[i] != shape[i]) return std::nullopt;
    if (is_digit) digits += text[i];
  }
  return digits;
}

int number_at(const std::string& digits, std::size_t at, std::size_t count) {
  int number = 0;
  for (std::size_t i = at; i < at + count; ++i) number = 10 * number + (digits[i] - '0');
  return number;
}


template <class T>
std::optional<T> read(TypedObject& in, std::string_view key, Need need, std::optional<T> (*reader)(std::string_view),
                      const std::string& allowed) {
  const std::string text = in.text(key, need);
  if (text.empty()) return std::nullopt;
  const std::optional<T> value = reader(text);
  if (!value) in.tell(key, describe(*in.find(key)), allowed, "Write " + allowed + ".");
  return value;
}

}  // namespace

std::optional<std::chrono::year_month_day> date_in(std::string_view text) {
  const auto digits = digits_of(text, "9999-99-99");
  if (!digits) return std::nullopt;
  const auto part = [&](std::size_t at, std::size_t count) { return number_at(*digits, at, count); };
  const std::chrono::year_month_day day{std::chrono::year{part(0, 4)},
                                        std::chrono::month{static_cast<unsigned>(part(4, 2))},
                                        std::chrono::day{static_cast<unsigned>(part(6, 2))}};
  if (!day.ok()) return std::nullopt;
  return day;
}

std::optional<MonthDay> month_day_in(std::string_view text) {
  const auto digits = digits_of(text, "99-99");
  if (!digits) return std::nullopt;
  const MonthDay day{number_at(*digits, 0, 2), number_at(*digits, 2, 2)};
  const std::chrono::month_day checked{std::chrono::month{static_cast<unsigned>(day.month)},
                                       std::chrono::day{static_cast<unsigned>(day.day)}};
  if (!checked.ok()) return std::nullopt;
  return day;
}

std::optional<Duration> time_of_day_in(std::string_view text) {
  if (text == "24:00") return hours(24.0);
  const auto digits = digits_of(text, "99:99");
  if (!digits) return std::nullopt;
  const int hour = number_at(*digits, 0, 2), minute = number_at(*digits, 2, 2);
  if (hour > 23 || minute > 59) return std::nullopt;
  return minutes(60.0 * hour + minute);
}

std::optional<std::chrono::year_month_day> read_date(TypedObject& in, std::string_view key, Need need) {
  return read(in, key, need, date_in, "a date as \"2027-05-14\"");
}
std::optional<MonthDay> read_month_day(TypedObject& in, std::string_view key, Need need) {
  return read(in, key, need, month_day_in, "a month and day as \"05-14\"");
}
std::optional<Duration> read_time_of_day(TypedObject& in, std::string_view key, Need need) {
  return read(in, key, need, time_of_day_in, "a time of day as \"07:30\"");
}

}  // namespace floatwright
