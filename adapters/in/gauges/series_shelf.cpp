#include "adapters/in/gauges/series_shelf.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

constexpr Instant kNotTold = Instant::min();  // before every date of change

std::string rows(std::size_t count) { return fmt::format("{} row{}", count, count == 1 ? "" : "s"); }

bool same(const Reading& a, const Reading& b) { return a.si == b.si && a.marks == b.marks; }

std::string value_text(const Reading& row) { return row.si ? fmt::format("{}", *row.si) : "no value"; }

// Indexes of the rows by time, those of one instant by date of change.
std::vector<std::size_t> by_time(const std::vector<Reading>& all, const std::vector<Instant>& changed) {
  std::vector<std::size_t> out(all.size());
  std::iota(out.begin(), out.end(), std::size_t{0});
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    if (all[a].time != all[b].time || changed.empty()) return all[a].time < all[b].time;
    return changed[a] < changed[b];
  });
  return out;
}

void add_doubt(GaugeAnswer& told, const std::string& sentence) {
  told.notes.push_back(sentence);
  told.doubts.push_back(sentence);
}

void tell_kind(const GaugeSeries& series, GaugeAnswer& told) {
  const std::string name = "series " + printable(series.series_id);
  if (series.daily)
    told.notes.push_back(name +
                         ": daily values; each time is the date of a local day, written as 00:00Z, and no instant");
  constexpr std::size_t kMostCodes = 20;
  std::string codes;
  std::size_t count = 0;
  for (const std::string& code : series.unknown_codes)
    if (count++ < kMostCodes) codes += (codes.empty() ? "" : ", ") + printable(code);
  if (count > kMostCodes) codes += fmt::format(" and {} more", count - kMostCodes);
  if (!codes.empty()) add_doubt(told, name + ": codes that are not known here, kept as a doubt: " + codes);
}

}  // namespace

std::size_t SeriesShelf::place_for(const GaugeSeries& head) {
  const std::string rest = fmt::format("{}\n{}\n{}\n{}", head.series_id, static_cast<int>(head.variable), head.daily,
                                       head.issued ? head.issued->time_since_epoch().count() : 0);
  const auto [found, is_new] = index_.try_emplace({head.station, rest}, series_.size());
  if (is_new) {
    series_.push_back({.head = head, .changed = {}});
    series_.back().head.readings.clear();
  }
  return found->second;
}

void SeriesShelf::add(std::size_t index, const Reading& row, std::optional<Instant> changed) {
  Shelved& to = series_[index];
  if (changed || !to.changed.empty()) {
    to.changed.resize(to.head.readings.size(), kNotTold);
    to.changed.push_back(changed.value_or(kNotTold));
  }
  to.head.readings.push_back(row);
}

void SeriesShelf::leave_out(const std::string& what, const std::string& why, const std::string& place,
                            std::size_t count) {
  leave_out(what, why, [&] { return place; }, count);
}

void SeriesShelf::leave_out(const std::string& what, const std::string& why, const std::function<std::string()>& place,
                            std::size_t count) {
  constexpr std::size_t kMostReasons = 8;
  auto& reasons = left_out_[what];
  const bool one_more = reasons.size() >= kMostReasons && !reasons.contains(why);
  LeftOut& entry = reasons[one_more ? "for more reasons than are told here" : why];
  if (entry.rows == 0 && entry.first_place.empty()) entry.first_place = place();
  entry.rows += count;
}

void SeriesShelf::put_in_order(Shelved& shelved, GaugeAnswer& told) {
  std::vector<Reading>& rows_in = shelved.head.readings;
  const auto not_later = [](const Reading& a, const Reading& b) { return a.time >= b.time; };
  if (std::adjacent_find(rows_in.begin(), rows_in.end(), not_later) == rows_in.end()) return;

  std::vector<Reading> out;
  std::size_t repeated = 0, differing = 0;
  std::string example;
  for (const std::size_t at : by_time(rows_in, shelved.changed)) {
    const Reading& row = rows_in[at];
    if (out.empty() || out.back().time != row.time) {
      out.push_back(row);
    } else if (same(out.back(), row)) {
      ++repeated;
    } else {
      if (differing++ == 0)
        example = fmt::format("at {} {} and then {}", date::format("%FT%TZ", row.time), value_text(out.back()),
                              value_text(row));
      out.back() = row;
    }
  }
  rows_in = std::move(out);
  const std::string name = "series " + printable(shelved.head.series_id);
  if (repeated > 0) told.notes.push_back(fmt::format("{}: {} sent twice, dropped", name, rows(repeated)));
  if (differing > 0)
    add_doubt(told, fmt::format("{}: {} of one instant with differing content ({}); the one written last was kept",
                                name, rows(differing), example));
}

GaugeAnswer SeriesShelf::answer() && {
  GaugeAnswer out{.series = {}, .notes = doubts_, .next = {}, .doubts = doubts_};
  out.notes.insert(out.notes.end(), remarks_.begin(), remarks_.end());
  for (const auto& [what, count] : not_used_)
    out.notes.push_back(fmt::format("{}: {} left out: it is not used here", what, rows(count)));
  for (const auto& [what, reasons] : left_out_)
    for (const auto& [why, entry] : reasons) {
      const std::string where = entry.first_place.empty() ? "" : fmt::format(" (first at {})", entry.first_place);
      add_doubt(out, fmt::format("{}: {} left out: {}{}", what, rows(entry.rows), why, where));
    }
  for (Shelved& shelved : series_) {
    put_in_order(shelved, out);
    tell_kind(shelved.head, out);
    out.series.push_back(std::move(shelved.head));
  }
  return out;
}

}  // namespace floatwright
