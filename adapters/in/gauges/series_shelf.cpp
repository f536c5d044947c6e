#include "adapters/in/gauges/series_shelf.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "adapters/in/gauges/plain_text.hpp"

namespace floatwright {
namespace {

std::string rows(std::size_t count) { return fmt::format("{} row{}", count, count == 1 ? "" : "s"); }

bool same(const Reading& a, const Reading& b) { return a.si == b.si && a.marks == b.marks; }

std::string value_text(const Reading& row) { return row.si ? fmt::format("{}", *row.si) : "no value"; }

void add_doubt(GaugeAnswer& told, const std::string& sentence) {
  told.notes.push_back(sentence);
  told.doubts.push_back(sentence);
}

void tell_kind(const GaugeSeries& series, GaugeAnswer& told) {
  const std::string name = "series " + shown(series.series_id);
  if (series.daily)
    told.notes.push_back(name +
                         ": daily values; each time is the date of a local day, written as 00:00Z, and no instant");
  std::string codes;
  for (const std::string& code : series.unknown_codes) codes += (codes.empty() ? "" : ", ") + shown(code);
  if (!codes.empty()) add_doubt(told, name + ": codes that are not known here, kept as a doubt: " + codes);
}

}  // namespace

std::size_t SeriesShelf::place_for(const GaugeSeries& head) {
  const std::string rest =
      fmt::format("{}\n{}\n{}", head.series_id, static_cast<int>(head.variable), head.daily ? "daily" : "");
  const auto [found, is_new] = index_.try_emplace({head.station, rest}, series_.size());
  if (is_new) {
    series_.push_back({.head = head, .rows = {}});
    series_.back().head.readings.clear();
  }
  return found->second;
}

void SeriesShelf::add(std::size_t index, Reading row, std::optional<Instant> changed) {
  series_[index].rows.push_back({std::move(row), changed});
}

void SeriesShelf::leave_out(const std::string& what, const std::string& why, const std::string& place,
                            std::size_t count) {
  LeftOut& entry = left_out_[{what, why}];
  if (entry.rows == 0 && entry.first_place.empty()) entry.first_place = place;
  entry.rows += count;
}

GaugeSeries SeriesShelf::in_order(const Shelved& shelved, GaugeAnswer& told) {
  std::vector<Row> sorted = shelved.rows;
  std::stable_sort(sorted.begin(), sorted.end(), [](const Row& a, const Row& b) {
    return std::tie(a.reading.time, a.changed) < std::tie(b.reading.time, b.changed);
  });
  GaugeSeries out = shelved.head;
  std::size_t repeated = 0, differing = 0;
  std::string example;
  for (const Row& row : sorted) {
    if (out.readings.empty() || out.readings.back().time != row.reading.time) {
      out.readings.push_back(row.reading);
    } else if (same(out.readings.back(), row.reading)) {
      ++repeated;
    } else {
      if (differing++ == 0)
        example = fmt::format("at {} {} and then {}", date::format("%FT%TZ", row.reading.time),
                              value_text(out.readings.back()), value_text(row.reading));
      out.readings.back() = row.reading;
    }
  }
  const std::string name = "series " + shown(out.series_id);
  if (repeated > 0) told.notes.push_back(fmt::format("{}: {} sent twice, dropped", name, rows(repeated)));
  if (differing > 0)
    add_doubt(told, fmt::format("{}: {} of one instant with differing content ({}); the one written last was kept",
                                name, rows(differing), example));
  return out;
}

GaugeAnswer SeriesShelf::answer() const {
  GaugeAnswer out{.series = {}, .notes = doubts_, .next = {}, .doubts = doubts_};
  out.notes.insert(out.notes.end(), remarks_.begin(), remarks_.end());
  for (const auto& [what, count] : not_used_)
    out.notes.push_back(fmt::format("{}: {} left out: it is not used here", what, rows(count)));
  for (const auto& [key, entry] : left_out_) {
    const std::string where = entry.first_place.empty() ? "" : fmt::format(" (first at {})", entry.first_place);
    add_doubt(out, fmt::format("{}: {} left out: {}{}", key.first, rows(entry.rows), key.second, where));
  }
  for (const Shelved& shelved : series_) {
    out.series.push_back(in_order(shelved, out));
    tell_kind(out.series.back(), out);
  }
  return out;
}

}  // namespace floatwright
