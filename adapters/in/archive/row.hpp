#pragma once
// Inside the archive: values as columns; a reading is three of them (instant, si, marks).
#include <cstdint>
#include <optional>

#include "engine/readings/reading.hpp"

namespace SQLite {
class Statement;
}

namespace floatwright {

[[nodiscard]] inline std::int64_t seconds_of(Instant instant) { return instant.time_since_epoch().count(); }
[[nodiscard]] inline Instant instant_of(std::int64_t seconds) { return Instant{Period{seconds}}; }

void bind_or_null(SQLite::Statement& statement, int at, std::optional<double> value);
void bind_or_null(SQLite::Statement& statement, int at, std::optional<std::int64_t> value);
void bind_or_null(SQLite::Statement& statement, int at, std::optional<Instant> value);
[[nodiscard]] std::optional<double> number_in(SQLite::Statement& statement, int column);
[[nodiscard]] std::optional<std::int64_t> integer_in(SQLite::Statement& statement, int column);
[[nodiscard]] std::optional<Instant> instant_in(SQLite::Statement& statement, int column);

// Binds from parameter `first`, three of them.
void bind_reading(SQLite::Statement& statement, int first, const Reading& reading);
// Reads from column `first`, three of them. A mark that is not known here is Mark::Unknown.
[[nodiscard]] Reading reading_in(SQLite::Statement& statement, int first);

inline constexpr std::uint16_t kAllMarks = (1u << (static_cast<unsigned>(Mark::Unknown) + 1)) - 1;

}  // namespace floatwright
