#include "adapters/in/archive/rescue.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <optional>

#include "adapters/in/archive/alone.hpp"
#include "adapters/in/archive/row.hpp"

namespace floatwright {
namespace {

struct Table {
  const char* name;
  const char* columns;
  const char* key;
};

constexpr Table kTables[] = {
    {"series", "id, station, series_id, variable, daily, issued, sensor, station_name, source", "id"},
    {"unknown_codes", "series, code", "series"},
    {"readings", "series, instant, si, marks, fetched_at", "series"},
    {"revisions", "id, series, instant, si, marks, fetched_at, changed_at", "id"}};

bool next_row(SQLite::Statement& from) {
  try {
    return from.executeStep();
  } catch (const SQLite::Exception&) {
    return false;  // the damage
  }
}

void bind_column(SQLite::Statement& into, int at, const SQLite::Column& column) {
  if (column.isInteger())
    into.bind(at, column.getInt64());
  else if (column.isFloat())
    into.bind(at, column.getDouble());
  else if (column.isNull())
    into.bind(at);
  else
    into.bind(at, column.getString());
}

// A row that the tables do not take was changed by the damage.
void put(SQLite::Statement& into) {
  try {
    into.exec();
  } catch (const SQLite::Exception& error) {
    if (error.getErrorCode() != SQLITE_CONSTRAINT) throw;
  }
  (void)into.tryReset();
}

std::optional<SQLite::Statement> select_from(SQLite::Database& damaged, const Table& table, const char* order) {
  try {
    return std::optional<SQLite::Statement>(
        std::in_place, damaged,
        fmt::format("SELECT {} FROM {} ORDER BY {} {}", table.columns, table.name, table.key, order));
  } catch (const SQLite::Exception&) {
    return std::nullopt;  // not even the list of tables can be read
  }
}

void copy(const Table& table, const char* order, SQLite::Database& damaged, SQLite::Database& anew) {
  auto from = select_from(damaged, table, order);
  if (!from) return;
  std::string values = "?";
  for (int i = 1; i < from->getColumnCount(); ++i) values += ", ?";
  SQLite::Statement into(anew,
                         fmt::format("INSERT OR IGNORE INTO {} ({}) VALUES ({})", table.name, table.columns, values));
  while (next_row(*from)) {
    for (int i = 0; i < from->getColumnCount(); ++i) bind_column(into, i + 1, from->getColumn(i));
    put(into);
  }
}

void drop_what_makes_no_sense(SQLite::Database& anew) {
  for (const char* table : {"readings", "revisions"})
    anew.exec(
        fmt::format("DELETE FROM {} WHERE series NOT IN (SELECT id FROM series) OR marks NOT BETWEEN 0 AND {} "
                    "OR abs(si) > 1.7976931348623157e308",
                    table, kAllMarks));
  anew.exec("DELETE FROM unknown_codes WHERE series NOT IN (SELECT id FROM series)");
}

std::int64_t count(SQLite::Database& database, const char* table) {
  return database.execAndGet(fmt::format("SELECT count(*) FROM {}", table)).getInt64();
}

}  // namespace

std::size_t rescue_readings(const std::filesystem::path& damaged, SQLite::Database& anew) {
  SQLite::Transaction whole(anew, SQLite::TransactionBehavior::IMMEDIATE);
  if (count(anew, "series") > 0) return 0;
  const auto from = opened_alone(damaged);
  from->exec("PRAGMA writable_schema = ON");  // reads a file that is shorter than it says
  for (const Table& table : kTables)
    for (const char* order : {"ASC", "DESC"}) copy(table, order, *from, anew);
  drop_what_makes_no_sense(anew);
  const std::int64_t saved = count(anew, "readings");
  whole.commit();
  return static_cast<std::size_t>(saved);
}

}  // namespace floatwright
