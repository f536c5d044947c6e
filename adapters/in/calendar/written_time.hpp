#pragma once
// Time as services and people write it: an instant with its offset, or a daily label, the date of a local day.
// ISO 8601 as far as it is met: "2018-11-03T01:45:00.000-04:00", "...Z", "...+0000", "2025-12-26", and a date at
// midnight without a zone for a daily label. Years 1800 to 2200.
#include <chrono>
#include <optional>
#include <string_view>

#include "engine/units/instant.hpp"

namespace floatwright {

struct WrittenTime {
  Instant local{};             // as the clock at the place shows it
  std::optional<Period> east;  // of Greenwich; none: no zone is written
};
// None where the date or hour can't be.
[[nodiscard]] std::optional<WrittenTime> written_time_in(std::string_view text);

[[nodiscard]] constexpr bool is_midnight(Instant local) {
  return local == std::chrono::floor<std::chrono::days>(local);
}

// The offset is the one written; seconds may be left out. None where there is no offset or the date or hour can't be.
// Parts of a second are dropped.
[[nodiscard]] std::optional<Instant> instant_in(std::string_view text);

// The date at 00:00Z; whatever zone follows is not used, since the date is the station's own.
[[nodiscard]] std::optional<Instant> date_label_in(std::string_view text);

}  // namespace floatwright
