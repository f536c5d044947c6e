#include "adapters/in/archive/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <array>

namespace floatwright {
namespace {

// Instants are UTC seconds since 1970. `readings` is kept in the order of its key, so a span of one series lies
// together. References are not enforced while writing (a look-up for each row); integrity() holds them.
constexpr const char* kReadingsAndRevisions = R"sql(
CREATE TABLE series (
  id           INTEGER PRIMARY KEY,
  station      TEXT NOT NULL,
  series_id    TEXT NOT NULL,
  variable     TEXT NOT NULL,
  daily        INTEGER NOT NULL CHECK (daily IN (0, 1)),
  issued       INTEGER,
  sensor       TEXT NOT NULL,
  station_name TEXT NOT NULL,
  source       TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX series_key ON series (station, series_id, variable, daily, ifnull(issued, 'observed'));
CREATE TABLE unknown_codes (
  series INTEGER NOT NULL REFERENCES series (id),
  code   TEXT NOT NULL,
  PRIMARY KEY (series, code)
) STRICT, WITHOUT ROWID;
CREATE TABLE readings (
  series     INTEGER NOT NULL REFERENCES series (id),
  instant    INTEGER NOT NULL,
  si         REAL,
  marks      INTEGER NOT NULL,
  fetched_at INTEGER NOT NULL,
  PRIMARY KEY (series, instant)
) STRICT, WITHOUT ROWID;
CREATE TABLE revisions (
  id         INTEGER PRIMARY KEY,
  series     INTEGER NOT NULL REFERENCES series (id),
  instant    INTEGER NOT NULL,
  si         REAL,
  marks      INTEGER NOT NULL,
  fetched_at INTEGER NOT NULL,
  changed_at INTEGER NOT NULL
) STRICT;
CREATE INDEX revisions_of_series ON revisions (series, instant);
CREATE TABLE asked (
  station   TEXT NOT NULL,
  service   TEXT NOT NULL,
  span_from INTEGER NOT NULL,
  span_to   INTEGER NOT NULL,
  at        INTEGER NOT NULL,
  PRIMARY KEY (station, service, span_from)
) STRICT, WITHOUT ROWID;
CREATE TABLE validators (
  id            INTEGER PRIMARY KEY,
  url           TEXT NOT NULL UNIQUE,
  etag          TEXT NOT NULL,
  last_modified TEXT NOT NULL
) STRICT;
)sql";

constexpr const char* kStations = R"sql(
CREATE TABLE stations (
  station          TEXT PRIMARY KEY,
  name             TEXT NOT NULL,
  site_type        TEXT NOT NULL,
  state            TEXT NOT NULL,
  latitude_deg     REAL,
  longitude_deg    REAL,
  zone             TEXT NOT NULL,
  daylight_saving  INTEGER,
  drainage_area_m2 REAL,
  altitude_m       REAL
) STRICT, WITHOUT ROWID;
CREATE TABLE series_of_stations (
  station       TEXT NOT NULL REFERENCES stations (station),
  place         INTEGER NOT NULL,
  series_id     TEXT NOT NULL,
  variable      TEXT,
  parameter     TEXT NOT NULL,
  statistic     TEXT NOT NULL,
  sensor        TEXT NOT NULL,
  unit          TEXT NOT NULL,
  is_primary    INTEGER NOT NULL,
  daily         INTEGER NOT NULL,
  begins        INTEGER,
  ends          INTEGER,
  longest_gap_s INTEGER,
  PRIMARY KEY (station, place)
) STRICT, WITHOUT ROWID;
)sql";

constexpr std::array kMigrations{kReadingsAndRevisions, kStations};

}  // namespace

int newest_archive_version() { return static_cast<int>(kMigrations.size()); }

int archive_version(SQLite::Database& database) { return database.execAndGet("PRAGMA user_version").getInt(); }

std::optional<Failure> why_not_readable(SQLite::Database& database, const std::filesystem::path& file) {
  SQLite::Transaction one_moment(database);  // another run may be making the tables just now
  const int application = database.execAndGet("PRAGMA application_id").getInt();
  const int tables = database.execAndGet("SELECT count(*) FROM sqlite_master").getInt();
  if (tables > 0 && application != kArchiveApplication)
    return Failure{fmt::format("{}: this is a database of another program, not an archive of readings; it was not "
                               "touched. Name another place as \"archive\" in settings.json.",
                               file.string()),
                   kExitBadData};
  const int version = archive_version(database);
  if (version > newest_archive_version())
    return Failure{fmt::format("{}: the archive was kept by a newer floatwright (archive version {}, this one knows up "
                               "to {}); it was not touched. Install that floatwright here, or name another place as "
                               "\"archive\" in settings.json.",
                               file.string(), version, newest_archive_version()),
                   kExitBadData};
  return std::nullopt;
}

void migrate(SQLite::Database& database) {
  if (archive_version(database) == newest_archive_version()) return;
  SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
  for (int version = archive_version(database); version < newest_archive_version(); ++version) {
    database.exec(kMigrations[static_cast<std::size_t>(version)]);
    database.exec(fmt::format("PRAGMA user_version = {}", version + 1));
  }
  database.exec(fmt::format("PRAGMA application_id = {}", kArchiveApplication));
  whole.commit();
}

}  // namespace floatwright
