#include "adapters/in/archive/storing.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

#include "adapters/in/archive/row.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

struct HeldRow {
  Reading row;
  std::int64_t fetched_at = 0;
};

bool is_same(const Reading& a, const Reading& b) { return a.si == b.si && a.marks == b.marks; }

// Approval is no revision: a provisional row becomes an approved one with the same number a year later, all of them.
bool is_revision(const Reading& was, const Reading& is) {
  constexpr Marks kApproval{Mark::Provisional, Mark::Approved};
  return was.si != is.si || ((was.marks.bits() ^ is.marks.bits()) & ~kApproval.bits()) != 0;
}

// Of rows of one instant the last is meant.
std::vector<Reading> sorted(std::vector<Reading> rows) {
  std::ranges::stable_sort(rows, {}, &Reading::time);
  std::vector<Reading> out;
  for (const Reading& row : rows) {
    if (!out.empty() && out.back().time == row.time)
      out.back() = row;
    else
      out.push_back(row);
  }
  return out;
}

bool is_sorted(const std::vector<Reading>& rows) {
  return std::ranges::adjacent_find(rows, [](const Reading& a, const Reading& b) { return b.time <= a.time; }) ==
         rows.end();
}

class Storing {
 public:
  Storing(SQLite::Database& database, Instant fetched_at)
      : fetched_at_(seconds_of(fetched_at)),
        keep_head_(database,
                   "INSERT INTO series (station, series_id, variable, daily, issued, sensor, station_name, source) "
                   "VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET sensor = excluded.sensor, station_name = "
                   "excluded.station_name, source = excluded.source WHERE (sensor, station_name, source) IS NOT "
                   "(excluded.sensor, excluded.station_name, excluded.source)"),
        find_head_(database,
                   "SELECT id FROM series WHERE station = ? AND series_id = ? AND variable = ? AND daily = ? AND "
                   "ifnull(issued, 'observed') = ifnull(?, 'observed')"),
        keep_code_(database, "INSERT INTO unknown_codes VALUES (?, ?) ON CONFLICT DO NOTHING"),
        held_(database,
              "SELECT instant, si, marks, fetched_at FROM readings WHERE series = ? AND instant BETWEEN ? AND ? "
              "ORDER BY instant"),
        put_(database,
             "INSERT INTO readings (series, instant, si, marks, fetched_at) VALUES (?, ?, ?, ?, ?) ON CONFLICT DO "
             "UPDATE SET si = excluded.si, marks = excluded.marks, fetched_at = excluded.fetched_at"),
        revise_(
            database,
            "INSERT INTO revisions (series, instant, si, marks, fetched_at, changed_at) VALUES (?, ?, ?, ?, ?, ?)") {}

  std::int64_t head(const GaugeSeries& series) {
    bind_key(keep_head_, series);
    keep_head_.bindNoCopy(6, series.sensor);
    keep_head_.bindNoCopy(7, series.station_name);
    keep_head_.bindNoCopy(8, series.source);
    run(keep_head_);
    bind_key(find_head_, series);
    find_head_.executeStep();
    const std::int64_t id = find_head_.getColumn(0).getInt64();
    find_head_.reset();
    for (const std::string& code : series.unknown_codes) {
      keep_code_.bind(1, id);
      keep_code_.bindNoCopy(2, code);
      run(keep_code_);
    }
    return id;
  }

  void rows(std::int64_t series, const std::vector<Reading>& rows) {
    if (rows.empty()) return;
    const auto held = held_rows(series, rows.front().time, rows.back().time);
    auto at = held.begin();
    for (const Reading& row : rows) {
      while (at != held.end() && at->row.time < row.time) ++at;
      const bool known = at != held.end() && at->row.time == row.time;
      if (known && is_same(at->row, row)) {
        ++stored_.same;
        continue;
      }
      if (known && is_revision(at->row, row)) revise(series, *at);
      put(series, row);
      ++(known ? stored_.changed : stored_.added);
    }
  }

  [[nodiscard]] Stored stored() const { return stored_; }

 private:
  static void run(SQLite::Statement& statement) {
    statement.exec();
    statement.reset();
  }

  static void bind_key(SQLite::Statement& statement, const GaugeSeries& series) {
    statement.bindNoCopy(1, series.station);
    statement.bindNoCopy(2, series.series_id);
    statement.bind(3, std::string{word_for(series.variable)});
    statement.bind(4, series.daily ? 1 : 0);
    bind_or_null(statement, 5, series.issued);
  }

  std::vector<HeldRow> held_rows(std::int64_t series, Instant from, Instant to) {
    held_.bind(1, series);
    held_.bind(2, seconds_of(from));
    held_.bind(3, seconds_of(to));
    std::vector<HeldRow> out;
    while (held_.executeStep()) out.push_back({reading_in(held_, 0), held_.getColumn(3).getInt64()});
    held_.reset();
    return out;
  }

  void put(std::int64_t series, const Reading& row) {
    put_.bind(1, series);
    bind_reading(put_, 2, row);
    put_.bind(5, fetched_at_);
    run(put_);
  }

  void revise(std::int64_t series, const HeldRow& was) {
    revise_.bind(1, series);
    bind_reading(revise_, 2, was.row);
    revise_.bind(5, was.fetched_at);
    revise_.bind(6, fetched_at_);
    run(revise_);
  }

  std::int64_t fetched_at_;
  SQLite::Statement keep_head_, find_head_, keep_code_, held_, put_, revise_;
  Stored stored_;
};

}  // namespace

Stored store_batch(SQLite::Database& database, const std::vector<GaugeSeries>& series, Instant fetched_at) {
  Storing storing(database, fetched_at);
  std::vector<std::pair<std::int64_t, const GaugeSeries*>> batch;
  for (const GaugeSeries& one : series) batch.emplace_back(storing.head(one), &one);
  std::ranges::stable_sort(batch, {}, &std::pair<std::int64_t, const GaugeSeries*>::first);
  for (const auto& [id, one] : batch) {
    if (is_sorted(one->readings))
      storing.rows(id, one->readings);
    else
      storing.rows(id, sorted(one->readings));
  }
  return storing.stored();
}

}  // namespace floatwright
