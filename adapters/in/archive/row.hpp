#pragma once
// Inside the archive: a reading as columns (instant, si, marks), and the rest of a series in its table.
#include <cstdint>

#include "engine/readings/reading.hpp"

namespace SQLite {
class Statement;
}

namespace floatwright {

[[nodiscard]] inline std::int64_t seconds_of(Instant instant) { return instant.time_since_epoch().count(); }
[[nodiscard]] inline Instant instant_of(std::int64_t seconds) { return Instant{Period{seconds}}; }

// Binds from parameter `first`, three of them.
void bind_reading(SQLite::Statement& statement, int first, const Reading& reading);
// Reads from column `first`, three of them. A mark that is not known here is Mark::Unknown.
[[nodiscard]] Reading reading_in(SQLite::Statement& statement, int first);

inline constexpr std::uint16_t kAllMarks = (1u << (static_cast<unsigned>(Mark::Unknown) + 1)) - 1;

}  // namespace floatwright
