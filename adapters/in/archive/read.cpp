#include <SQLiteCpp/SQLiteCpp.h>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/row.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

struct Head {
  std::int64_t id = 0;
  GaugeSeries series;
};

// The columns beside max(issued) are those of the row that has it: SQLite promises that ("Bare columns in an aggregate
// query" in its description of SELECT).
std::vector<Head> newest_heads(SQLite::Database& database, const std::string& station, Instant issued_until) {
  SQLite::Statement find(database,
                         "SELECT id, series_id, variable, daily, sensor, station_name, source, max(issued) FROM series "
                         "WHERE station = ? AND (issued IS NULL OR issued <= ?) "
                         "GROUP BY series_id, variable, daily, issued IS NULL "
                         "ORDER BY series_id, variable, daily, issued");
  find.bind(1, station);
  find.bind(2, seconds_of(issued_until));
  std::vector<Head> out;
  while (find.executeStep()) {
    const auto variable = value_in(kVariableWords, find.getColumn(2).getString());
    if (!variable) continue;  // integrity() tells of it
    out.push_back({.id = find.getColumn(0).getInt64(),
                   .series = {.station = station,
                              .series_id = find.getColumn(1).getString(),
                              .sensor = find.getColumn(4).getString(),
                              .station_name = find.getColumn(5).getString(),
                              .source = find.getColumn(6).getString(),
                              .variable = *variable,
                              .daily = find.getColumn(3).getInt() != 0,
                              .issued = instant_in(find, 7),
                              .readings = {},
                              .unknown_codes = {}}});
  }
  return out;
}

std::vector<GaugeSeries> series_between(SQLite::Database& database, std::vector<Head> heads, Instant from, Instant to) {
  SQLite::Statement rows(database,
                         "SELECT instant, si, marks FROM readings WHERE series = ? AND instant BETWEEN ? AND ? "
                         "ORDER BY instant");
  SQLite::Statement codes(database, "SELECT code FROM unknown_codes WHERE series = ?");
  std::vector<GaugeSeries> out;
  for (Head& head : heads) {
    rows.bind(1, head.id);
    rows.bind(2, seconds_of(from));
    rows.bind(3, seconds_of(to));
    while (rows.executeStep()) head.series.readings.push_back(reading_in(rows, 0));
    rows.reset();
    if (head.series.readings.empty()) continue;
    codes.bind(1, head.id);
    while (codes.executeStep()) head.series.unknown_codes.insert(codes.getColumn(0).getString());
    codes.reset();
    out.push_back(std::move(head.series));
  }
  return out;
}

}  // namespace

Result<std::vector<GaugeSeries>> Archive::series_of(const std::string& station, Instant from, Instant to,
                                                    Instant issued_until) const {
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction one_moment(database);
    return series_between(database, newest_heads(database, station, issued_until), from, to);
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "read readings", error));
  }
}

Result<std::vector<Revision>> Archive::revisions_of(const std::string& station, Instant from, Instant to) const {
  try {
    SQLite::Statement find(connection_->opened(),
                           "SELECT series_id, variable, daily, issued, instant, si, marks, fetched_at, changed_at "
                           "FROM revisions JOIN series ON series.id = revisions.series "
                           "WHERE station = ? AND instant BETWEEN ? AND ? "
                           "ORDER BY series_id, variable, daily, issued, instant, revisions.id");
    find.bind(1, station);
    find.bind(2, seconds_of(from));
    find.bind(3, seconds_of(to));
    std::vector<Revision> out;
    while (find.executeStep()) {
      const auto variable = value_in(kVariableWords, find.getColumn(1).getString());
      if (!variable) continue;  // integrity() tells of it
      out.push_back({.series_id = find.getColumn(0).getString(),
                     .variable = *variable,
                     .daily = find.getColumn(2).getInt() != 0,
                     .issued = instant_in(find, 3),
                     .was = reading_in(find, 4),
                     .fetched_at = instant_of(find.getColumn(7).getInt64()),
                     .changed_at = instant_of(find.getColumn(8).getInt64())});
    }
    return out;
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "read revisions", error));
  }
}

}  // namespace floatwright
