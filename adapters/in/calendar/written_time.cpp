#include "adapters/in/calendar/written_time.hpp"

#include <chrono>

namespace floatwright {
namespace {

// Takes the text from its front, piece by piece; once something does not fit, `ok` stays false.
struct Cursor {
  std::string_view rest;
  bool ok = true;

  int digits(std::size_t count, int least, int most) {
    if (!ok || rest.size() < count) return fail();
    int value = 0;
    for (const char c : rest.substr(0, count)) {
      if (c < '0' || c > '9') return fail();
      value = value * 10 + (c - '0');
    }
    rest.remove_prefix(count);
    return value < least || value > most ? fail() : value;
  }

  bool take(char c) {
    if (!ok || rest.empty() || rest.front() != c) return false;
    rest.remove_prefix(1);
    return true;
  }

  void need(char c) {
    if (!take(c)) fail();
  }

  int fail() {
    ok = false;
    return 0;
  }
};

std::chrono::sys_days date(Cursor& cursor) {
  const std::chrono::year year{cursor.digits(4, 1800, 2200)};
  cursor.need('-');
  const std::chrono::month month{static_cast<unsigned>(cursor.digits(2, 1, 12))};
  cursor.need('-');
  const std::chrono::day day{static_cast<unsigned>(cursor.digits(2, 1, 31))};
  const std::chrono::year_month_day all{year, month, day};
  if (!cursor.ok || !all.ok()) {
    cursor.fail();
    return {};
  }
  return all;
}

Period time_of_day(Cursor& cursor) {
  const std::chrono::hours hour{cursor.digits(2, 0, 23)};
  cursor.need(':');
  const std::chrono::minutes minute{cursor.digits(2, 0, 59)};
  std::chrono::seconds second{0};
  if (cursor.take(':')) {
    second = std::chrono::seconds{cursor.digits(2, 0, 59)};
    if (cursor.take('.')) {
      cursor.digits(1, 0, 9);
      while (cursor.ok && !cursor.rest.empty() && cursor.rest.front() >= '0' && cursor.rest.front() <= '9')
        cursor.rest.remove_prefix(1);
    }
  }
  return hour + minute + second;
}

// Seconds east of Greenwich.
Period offset(Cursor& cursor) {
  if (cursor.take('Z')) return Period{0};
  const bool west = cursor.take('-');
  if (!west) cursor.need('+');
  const std::chrono::hours hour{cursor.digits(2, 0, 14)};
  cursor.take(':');
  const std::chrono::minutes minute{cursor.digits(2, 0, 59)};
  return west ? -Period{hour + minute} : Period{hour + minute};
}

}  // namespace

std::optional<WrittenTime> written_time_in(std::string_view text) {
  Cursor cursor{text};
  WrittenTime out{.local = date(cursor), .east = {}};
  if (!cursor.ok) return std::nullopt;
  if (cursor.rest.empty()) return out;
  cursor.need('T');
  out.local += time_of_day(cursor);
  if (cursor.ok && !cursor.rest.empty()) out.east = offset(cursor);
  if (!cursor.ok || !cursor.rest.empty()) return std::nullopt;
  return out;
}

std::optional<Instant> instant_in(std::string_view text) {
  const auto written = written_time_in(text);
  if (!written || !written->east) return std::nullopt;
  return written->local - *written->east;
}

std::optional<Instant> date_label_in(std::string_view text) {
  const auto written = written_time_in(text);
  if (!written || !is_midnight(written->local)) return std::nullopt;
  return written->local;
}

}  // namespace floatwright
