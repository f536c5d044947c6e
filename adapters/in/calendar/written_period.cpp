#include "adapters/in/calendar/written_period.hpp"

#include <charconv>
#include <chrono>

namespace floatwright {
namespace {

struct Designator {
  char letter;
  Period length;
};

constexpr Designator kOfDate[] = {{'Y', std::chrono::years{1}},
                                  {'M', std::chrono::months{1}},
                                  {'W', std::chrono::weeks{1}},
                                  {'D', std::chrono::days{1}}};
constexpr Designator kOfTime[] = {{'H', std::chrono::hours{1}}, {'M', std::chrono::minutes{1}}, {'S', std::chrono::seconds{1}}};
constexpr Period kLongest = std::chrono::years{200};

// Takes "5Y" and the like from the front, each letter once and in order; false: something else stands there.
template <std::size_t N>
bool take(std::string_view& text, const Designator (&known)[N], Period& sum, bool& some) {
  std::size_t next = 0;
  while (!text.empty() && text.front() != 'T') {
    Period::rep count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc{} || count < 0 || end == text.data() + text.size()) return false;
    while (next < N && known[next].letter != *end) ++next;
    if (next == N || count > kLongest / known[next].length) return false;
    sum += count * known[next++].length;
    some = true;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()) + 1);
  }
  return true;
}

}  // namespace

std::optional<Period> period_in(std::string_view text) {
  if (!text.starts_with('P')) return std::nullopt;
  text.remove_prefix(1);
  Period sum{0};
  bool some = false;
  if (!take(text, kOfDate, sum, some)) return std::nullopt;
  if (text.starts_with('T')) {
    text.remove_prefix(1);
    some = false;
    if (text.empty() || !take(text, kOfTime, sum, some)) return std::nullopt;
  }
  if (!some || !text.empty() || sum > kLongest) return std::nullopt;
  return sum;
}

}  // namespace floatwright
