#include "adapters/in/gauges/nws_weather/interval.hpp"

#include <charconv>
#include <chrono>

#include "adapters/in/calendar/written_time.hpp"

namespace floatwright {
namespace {

constexpr Period kLongest = std::chrono::days{31};

// A whole number and its letter off the front of `text`, where the letter is `unit`; 0 where it is another.
std::optional<int> taken(std::string_view& text, char unit) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || number < 0 || number > 10000 || end == text.data() + text.size()) return std::nullopt;
  if (*end != unit) return 0;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()) + 1);
  return number;
}

// "P1DT6H", "PT30M", "P2D".
std::optional<Period> period_in(std::string_view text) {
  if (!text.starts_with('P')) return std::nullopt;
  text.remove_prefix(1);
  Period out{0};
  const auto add = [&](char unit, Period length) {
    if (text.empty() || text.front() == 'T') return true;
    const auto number = taken(text, unit);
    if (number) out += *number * length;
    return number.has_value();
  };
  if (!add('D', std::chrono::days{1})) return std::nullopt;
  if (text.starts_with('T')) {
    text.remove_prefix(1);
    if (text.empty()) return std::nullopt;
    if (!add('H', std::chrono::hours{1}) || !add('M', std::chrono::minutes{1})) return std::nullopt;
  }
  return text.empty() ? std::optional{out} : std::nullopt;
}

}  // namespace

std::optional<Interval> interval_in(std::string_view text) {
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto from = instant_in(text.substr(0, slash));
  if (!from) return std::nullopt;
  const std::string_view rest = text.substr(slash + 1);
  const auto period = period_in(rest);
  const auto to = period ? std::optional{*from + *period} : instant_in(rest);
  if (!to || *to <= *from || *to - *from > kLongest) return std::nullopt;
  return Interval{*from, *to};
}

}  // namespace floatwright
