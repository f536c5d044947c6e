#include "adapters/in/archive/row.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace floatwright {

void bind_reading(SQLite::Statement& statement, int first, const Reading& reading) {
  statement.bind(first, seconds_of(reading.time));
  if (reading.si)
    statement.bind(first + 1, *reading.si);
  else
    statement.bind(first + 1);
  statement.bind(first + 2, static_cast<std::int32_t>(reading.marks.bits()));
}

Reading reading_in(SQLite::Statement& statement, int first) {
  Reading out;
  out.time = instant_of(statement.getColumn(first).getInt64());
  if (const auto si = statement.getColumn(first + 1); !si.isNull()) out.si = si.getDouble();
  const auto bits = statement.getColumn(first + 2).getInt64();
  out.marks = Marks::from_bits(static_cast<std::uint16_t>(bits & kAllMarks));
  if ((bits & ~std::int64_t{kAllMarks}) != 0) out.marks.insert(Mark::Unknown);
  return out;
}

}  // namespace floatwright
