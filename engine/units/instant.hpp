#pragma once
// The clock: instants are UTC seconds, zones live at the edges. TimeGrid is an even row of instants.
#include <chrono>
#include <cstddef>

#include "engine/units/quantity.hpp"

namespace floatwright {

using Instant = std::chrono::sys_seconds;
using Period = std::chrono::seconds;

[[nodiscard]] constexpr Duration duration(Period p) { return Duration::from_si(static_cast<double>(p.count())); }
// Rounded to the nearest second.
[[nodiscard]] constexpr Period period(Duration d) {
  return Period{static_cast<Period::rep>(d.si() + (d.si() < 0 ? -0.5 : 0.5))};
}

struct TimeGrid {
  Instant start{};
  Period step{3600};
  std::size_t count = 0;

  [[nodiscard]] Instant at(std::size_t i) const { return start + step * static_cast<Period::rep>(i); }
  [[nodiscard]] Instant last() const { return at(count == 0 ? 0 : count - 1); }
  // Index of the newest grid instant that is not after `t`, held to the grid's ends.
  [[nodiscard]] std::size_t index_before(Instant t) const {
    if (count == 0 || t <= start) return 0;
    const auto i = static_cast<std::size_t>((t - start) / step);
    return i < count ? i : count - 1;
  }
};

}  // namespace floatwright
