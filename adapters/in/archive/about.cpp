#include <SQLiteCpp/SQLiteCpp.h>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/row.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

void put_station(SQLite::Database& database, const StationAbout& about) {
  SQLite::Statement put(database, "INSERT OR REPLACE INTO stations VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  put.bind(1, about.station);
  put.bind(2, about.name);
  put.bind(3, about.site_type);
  put.bind(4, about.state);
  bind_or_null(put, 5, about.latitude_deg);
  bind_or_null(put, 6, about.longitude_deg);
  put.bind(7, about.zone);
  bind_or_null(put, 8, about.daylight_saving ? std::optional<std::int64_t>(*about.daylight_saving) : std::nullopt);
  bind_or_null(put, 9, about.drainage_area ? std::optional(about.drainage_area->si()) : std::nullopt);
  bind_or_null(put, 10, about.altitude ? std::optional(about.altitude->si()) : std::nullopt);
  put.exec();
}

void put_series(SQLite::Database& database, const std::string& station, int place, const SeriesAbout& about) {
  SQLite::Statement put(database, "INSERT INTO series_of_stations VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  put.bind(1, station);
  put.bind(2, place);
  put.bind(3, about.series_id);
  if (about.variable)
    put.bind(4, std::string{word_for(*about.variable)});
  else
    put.bind(4);
  put.bind(5, about.parameter);
  put.bind(6, about.statistic);
  put.bind(7, about.sensor);
  put.bind(8, about.unit);
  put.bind(9, about.primary ? 1 : 0);
  put.bind(10, about.daily ? 1 : 0);
  bind_or_null(put, 11, about.begin);
  bind_or_null(put, 12, about.end);
  bind_or_null(put, 13, about.longest_gap ? std::optional<std::int64_t>(about.longest_gap->count()) : std::nullopt);
  put.exec();
}

std::optional<StationAbout> station_in(SQLite::Database& database, const std::string& station) {
  SQLite::Statement find(database,
                         "SELECT name, site_type, state, latitude_deg, longitude_deg, zone, daylight_saving, "
                         "drainage_area_m2, altitude_m FROM stations WHERE station = ?");
  find.bind(1, station);
  if (!find.executeStep()) return std::nullopt;
  StationAbout out;
  out.station = station;
  out.name = find.getColumn(0).getString();
  out.site_type = find.getColumn(1).getString();
  out.state = find.getColumn(2).getString();
  out.latitude_deg = number_in(find, 3);
  out.longitude_deg = number_in(find, 4);
  out.zone = find.getColumn(5).getString();
  if (const auto saving = integer_in(find, 6)) out.daylight_saving = *saving != 0;
  if (const auto area = number_in(find, 7)) out.drainage_area = Area::from_si(*area);
  if (const auto altitude = number_in(find, 8)) out.altitude = Length::from_si(*altitude);
  return out;
}

std::vector<SeriesAbout> series_in(SQLite::Database& database, const std::string& station) {
  SQLite::Statement find(database,
                         "SELECT series_id, variable, parameter, statistic, sensor, unit, is_primary, daily, begins, "
                         "ends, longest_gap_s FROM series_of_stations WHERE station = ? ORDER BY place");
  find.bind(1, station);
  std::vector<SeriesAbout> all;
  while (find.executeStep()) {
    SeriesAbout& out = all.emplace_back();
    out.series_id = find.getColumn(0).getString();
    out.variable = value_in(kVariableWords, find.getColumn(1).getString());
    out.parameter = find.getColumn(2).getString();
    out.statistic = find.getColumn(3).getString();
    out.sensor = find.getColumn(4).getString();
    out.unit = find.getColumn(5).getString();
    out.primary = find.getColumn(6).getInt() != 0;
    out.daily = find.getColumn(7).getInt() != 0;
    out.begin = instant_in(find, 8);
    out.end = instant_in(find, 9);
    if (const auto gap = integer_in(find, 10)) out.longest_gap = Period{*gap};
  }
  return all;
}

}  // namespace

Result<void> Archive::keep_about(const StationAbout& about) {
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
    put_station(database, about);
    SQLite::Statement before(database, "DELETE FROM series_of_stations WHERE station = ?");
    before.bind(1, about.station);
    before.exec();
    int place = 0;
    for (const SeriesAbout& series : about.series) put_series(database, about.station, place++, series);
    whole.commit();
    return {};
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "keep what is said of a station", error));
  }
}

Result<std::optional<StationAbout>> Archive::about(const std::string& station) const {
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction one_moment(database);
    if (!database.tableExists("stations")) return std::nullopt;  // a file of version 1, opened to read
    auto out = station_in(database, station);
    if (out) out->series = series_in(database, station);
    return out;
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "read what is said of a station", error));
  }
}

}  // namespace floatwright
