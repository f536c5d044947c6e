#include "adapters/in/archive/superseded.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "adapters/in/archive/archive.hpp"
#include "adapters/in/archive/row.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

std::vector<std::int64_t> superseded_by(SQLite::Database& database, const GaugeSeries& forecast, Instant fetched_at) {
  SQLite::Statement find(database,
                         "SELECT id FROM series WHERE station = ?1 AND series_id = ?2 AND variable = ?3 AND daily = ?4 "
                         "AND issued < ?6 + (SELECT max(issued) FROM series WHERE station = ?1 AND series_id = ?2 AND "
                         "variable = ?3 AND daily = ?4 AND issued <= ?5)");
  find.bind(1, forecast.station);
  find.bind(2, forecast.series_id);
  find.bind(3, std::string{word_for(forecast.variable)});
  find.bind(4, forecast.daily ? 1 : 0);
  find.bind(5, seconds_of(fetched_at + std::chrono::days{1}));
  find.bind(6, static_cast<std::int64_t>(-kSupersededForecastsKept.count()));
  std::vector<std::int64_t> out;
  while (find.executeStep()) out.push_back(find.getColumn(0).getInt64());
  return out;
}

}  // namespace

void remove_superseded(SQLite::Database& database, const std::vector<GaugeSeries>& stored, Instant fetched_at) {
  for (const GaugeSeries& series : stored) {
    if (!series.issued) continue;
    for (const std::int64_t id : superseded_by(database, series, fetched_at)) {
      for (const char* of : {"DELETE FROM readings WHERE series = ?", "DELETE FROM revisions WHERE series = ?",
                             "DELETE FROM unknown_codes WHERE series = ?", "DELETE FROM series WHERE id = ?"}) {
        SQLite::Statement remove(database, of);
        remove.bind(1, id);
        remove.exec();
      }
    }
  }
}

}  // namespace floatwright
