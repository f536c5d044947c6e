#include "adapters/in/calendar/instants_in_order.hpp"

#include <cstring>

namespace floatwright {
namespace {

constexpr std::size_t kClock = 11,
                      kBehindClock = 16;  // of "2018-11-03T01:45:00.000-04:00": where 01:45 begins and ends

// Of "01:45"; none where it is not written so.
std::optional<Period> clock_in(std::string_view text) {
  const auto digit = [&](std::size_t i) { return static_cast<unsigned>(text[i] - '0'); };
  const unsigned hour = 10 * digit(0) + digit(1), minute = 10 * digit(3) + digit(4);
  if (digit(0) > 2 || digit(1) > 9 || hour > 23 || text[2] != ':' || digit(3) > 5 || digit(4) > 9) return std::nullopt;
  return Period{std::chrono::minutes{60 * hour + minute}};
}

}  // namespace

std::optional<Instant> InstantsInOrder::next(std::string_view text) {
  const bool usual = text.size() > kBehindClock;
  const auto clock = usual ? clock_in(text.substr(kClock, kBehindClock - kClock)) : std::nullopt;
  if (clock && text.size() == before_.size() && std::memcmp(text.data(), before_.data(), kClock) == 0 &&
      text.substr(kBehindClock) == std::string_view{before_}.substr(kBehindClock))
    return its_hour_zero_ + *clock;
  const auto instant = instant_in(text);
  before_ = instant && clock ? text : std::string_view{};
  if (instant && clock) its_hour_zero_ = *instant - *clock;
  return instant;
}

}  // namespace floatwright
