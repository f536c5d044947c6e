#include "adapters/in/gauges/usgs_legacy/legacy_block.hpp"

#include <algorithm>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"

namespace floatwright {

void LegacyBlock::BadTimes::add(std::size_t row, const std::string& text) {
  if (rows++ > 0) return;
  first = row;
  first_text = text;
}

void LegacyBlock::take(const JsonValue& time, const JsonValue& value, const JsonValue& qualifiers) {
  const std::size_t row = size_++;
  if (!time.is(JsonValue::Kind::Text) || value.is(JsonValue::Kind::Absent)) {
    troubles_.push_back({"no value with a dateTime", std::to_string(row)});
    return;
  }
  const auto written = written_time_in(time.text);
  if (!written) return unreadable_.add(row, time.text);
  if (!written->east) without_zone_.add(row, time.text);
  if (!is_midnight(written->local)) not_midnight_.add(row, time.text);
  if (row == 0) begins_with_a_date = !written->east && is_midnight(written->local);

  const RowValue read = row_value(value, {});
  if (read.broken) {
    troubles_.push_back({*read.broken, std::to_string(row) + "/value"});
    return;
  }
  if (qualifiers.text != last_codes_) {
    last_codes_ = qualifiers.text;
    last_marks_ = {};
    add_marks(qualifiers.text, last_marks_, unknown_codes_);
  }
  Marks marks = read.marks;
  marks.insert(last_marks_);
  rows_.push_back({.local = written->local,
                   .number = read.number.value_or(0.0),
                   .east_s = static_cast<std::int32_t>(written->east.value_or(Period{0}).count()),
                   .marks = marks,
                   .has_zone = written->east.has_value(),
                   .has_number = read.number.has_value()});
}

void LegacyBlock::shelve(SeriesShelf& shelf, std::size_t at, const UnitLine& unit,
                         std::span<const double> no_data) const {
  const bool daily = shelf.at(at).daily;
  for (const Trouble& trouble : troubles_)
    shelf.leave_out("series " + printable(shelf.at(at).series_id), trouble.why, place + "/value/" + trouble.place);
  leave_out(shelf, at, unreadable_);
  leave_out(shelf, at, daily ? not_midnight_ : without_zone_);
  shelf.at(at).unknown_codes.insert(unknown_codes_.begin(), unknown_codes_.end());
  for (const Row& row : rows_) {
    if (daily ? !is_midnight(row.local) : !row.has_zone) continue;
    Reading reading{.time = daily ? row.local : row.local - Period{row.east_s}, .si = {}, .marks = row.marks};
    if (row.has_number && std::find(no_data.begin(), no_data.end(), row.number) == no_data.end())
      reading.si = unit.offset + unit.factor * row.number;
    shelf.add(at, reading);
  }
}

void LegacyBlock::leave_out(SeriesShelf& shelf, std::size_t at, const BadTimes& bad) const {
  if (bad.rows == 0) return;
  shelf.leave_out("series " + printable(shelf.at(at).series_id),
                  "the time can't be read, first \"" + printable(bad.first_text) + "\"",
                  place + "/value/" + std::to_string(bad.first) + "/dateTime", bad.rows);
}

}  // namespace floatwright
