#include "adapters/in/archive/row.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace floatwright {

void bind_or_null(SQLite::Statement& statement, int at, std::optional<double> value) {
  if (value)
    statement.bind(at, *value);
  else
    statement.bind(at);
}

void bind_or_null(SQLite::Statement& statement, int at, std::optional<std::int64_t> value) {
  if (value)
    statement.bind(at, *value);
  else
    statement.bind(at);
}

void bind_or_null(SQLite::Statement& statement, int at, std::optional<Instant> value) {
  bind_or_null(statement, at, value ? std::optional(seconds_of(*value)) : std::nullopt);
}

std::optional<double> number_in(SQLite::Statement& statement, int column) {
  const auto found = statement.getColumn(column);
  return found.isNull() ? std::nullopt : std::optional(found.getDouble());
}

std::optional<std::int64_t> integer_in(SQLite::Statement& statement, int column) {
  const auto found = statement.getColumn(column);
  return found.isNull() ? std::nullopt : std::optional(found.getInt64());
}

std::optional<Instant> instant_in(SQLite::Statement& statement, int column) {
  const auto found = integer_in(statement, column);
  return found ? std::optional(instant_of(*found)) : std::nullopt;
}

void bind_reading(SQLite::Statement& statement, int first, const Reading& reading) {
  statement.bind(first, seconds_of(reading.time));
  bind_or_null(statement, first + 1, reading.si);
  statement.bind(first + 2, static_cast<std::int32_t>(reading.marks.bits()));
}

Reading reading_in(SQLite::Statement& statement, int first) {
  Reading out;
  out.time = instant_of(statement.getColumn(first).getInt64());
  out.si = number_in(statement, first + 1);
  const auto bits = statement.getColumn(first + 2).getInt64();
  out.marks = Marks::from_bits(static_cast<std::uint16_t>(bits & kAllMarks));
  if ((bits & ~std::int64_t{kAllMarks}) != 0) out.marks.insert(Mark::Unknown);
  return out;
}

}  // namespace floatwright
