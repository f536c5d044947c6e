#include <SQLiteCpp/SQLiteCpp.h>
#include <date/date.h>
#include <fmt/format.h>

#include <cmath>
#include <optional>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/storing.hpp"
#include "adapters/in/archive/superseded.hpp"

namespace floatwright {
namespace {

constexpr const char* kDoing = "store readings";

// SQLite would keep a number that is none as a missing value, in silence.
std::optional<Failure> not_a_number_in(const std::vector<GaugeSeries>& series) {
  for (const GaugeSeries& one : series) {
    for (const Reading& row : one.readings) {
      if (!row.si || std::isfinite(*row.si)) continue;
      return Failure{fmt::format("{} of {} at {}: {} is no reading; nothing of this answer was stored.", one.series_id,
                                 one.station, date::format("%FT%TZ", row.time), *row.si),
                     kExitBadData};
    }
  }
  return std::nullopt;
}

Stored stored_whole(SQLite::Database& database, const std::vector<GaugeSeries>& series, Instant fetched_at) {
  SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
  const Stored stored = store_batch(database, series, fetched_at);
  remove_superseded(database, series, fetched_at);
  whole.commit();
  return stored;
}

}  // namespace

Result<Stored> Archive::store(const std::vector<GaugeSeries>& series, Instant fetched_at) {
  if (auto failure = not_a_number_in(series)) return tl::unexpected(*failure);
  Connection& at = *connection_;
  try {
    return stored_whole(at.opened(), series, fetched_at);
  } catch (const SQLite::Exception& error) {
    if (!is_damage(error)) return tl::unexpected(archive_failure(at.file, kDoing, error));
  }
  if (const auto anew = at.begin_anew(); !anew) return tl::unexpected(anew.error());
  try {
    return stored_whole(at.opened(), series, fetched_at);
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(at.file, kDoing, error));
  }
}

}  // namespace floatwright
