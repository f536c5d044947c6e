#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

#include "adapters/in/archive/connection.hpp"
#include "adapters/in/archive/row.hpp"

namespace floatwright {
namespace {

constexpr int kValidatorsKept = 1000;

std::vector<Asked> spans_of(SQLite::Database& database, const std::string& station) {
  SQLite::Statement find(database,
                         "SELECT service, span_from, span_to, at FROM asked WHERE station = ? "
                         "ORDER BY service, span_from");
  find.bind(1, station);
  std::vector<Asked> out;
  while (find.executeStep()) {
    out.push_back({.station = station,
                   .service = find.getColumn(0).getString(),
                   .from = instant_of(find.getColumn(1).getInt64()),
                   .to = instant_of(find.getColumn(2).getInt64()),
                   .at = instant_of(find.getColumn(3).getInt64())});
  }
  return out;
}

bool meet(const Asked& a, const Asked& b) { return a.service == b.service && a.from <= b.to && b.from <= a.to; }

// `held` and `noted` as one span. How fresh it is, its end says; what was noted last stands, also by a clock put back.
Asked together(const Asked& held, const Asked& noted) {
  Asked out = noted;
  out.from = std::min(held.from, noted.from);
  if (held.to > noted.to) {
    out.to = held.to;
    out.at = held.at;
  }
  return out;
}

void forget(SQLite::Database& database, const Asked& span) {
  SQLite::Statement remove(database, "DELETE FROM asked WHERE station = ? AND service = ? AND span_from = ?");
  remove.bind(1, span.station);
  remove.bind(2, span.service);
  remove.bind(3, seconds_of(span.from));
  remove.exec();
}

void keep(SQLite::Database& database, const Asked& span) {
  SQLite::Statement put(database,
                        "INSERT INTO asked (station, service, span_from, span_to, at) VALUES (?, ?, ?, ?, ?)");
  put.bind(1, span.station);
  put.bind(2, span.service);
  put.bind(3, seconds_of(span.from));
  put.bind(4, seconds_of(span.to));
  put.bind(5, seconds_of(span.at));
  put.exec();
}

}  // namespace

Result<void> Archive::note_asked(const Asked& asked) {
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
    Asked span = asked;
    for (const Asked& held : spans_of(database, asked.station)) {
      if (!meet(held, span)) continue;
      forget(database, held);
      span = together(held, span);
    }
    keep(database, span);
    whole.commit();
    return {};
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "note what was asked", error));
  }
}

Result<std::vector<Asked>> Archive::asked(const std::string& station) const {
  try {
    return spans_of(connection_->opened(), station);
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "read what was asked", error));
  }
}

Result<void> Archive::keep_validator(const std::string& url, const Validator& validator) {
  try {
    SQLite::Database& database = connection_->opened();
    SQLite::Transaction whole(database, SQLite::TransactionBehavior::IMMEDIATE);
    SQLite::Statement put(database, "INSERT OR REPLACE INTO validators (url, etag, last_modified) VALUES (?, ?, ?)");
    put.bind(1, url);
    put.bind(2, validator.etag);
    put.bind(3, validator.last_modified);
    put.exec();
    SQLite::Statement old(database, "DELETE FROM validators WHERE id <= (SELECT max(id) FROM validators) - ?");
    old.bind(1, kValidatorsKept);
    old.exec();
    whole.commit();
    return {};
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "note how to ask again", error));
  }
}

Result<Validator> Archive::validator(const std::string& url) const {
  try {
    SQLite::Statement find(connection_->opened(), "SELECT etag, last_modified FROM validators WHERE url = ?");
    find.bind(1, url);
    if (!find.executeStep()) return Validator{};
    return Validator{.etag = find.getColumn(0).getString(), .last_modified = find.getColumn(1).getString()};
  } catch (const SQLite::Exception& error) {
    return tl::unexpected(archive_failure(connection_->file, "read how to ask again", error));
  }
}

}  // namespace floatwright
