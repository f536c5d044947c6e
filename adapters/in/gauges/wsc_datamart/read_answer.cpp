#include "adapters/in/gauges/wsc_datamart/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "adapters/in/gauges/wsc_rows.hpp"
#include "adapters/in/gauges/wsc_words.hpp"

namespace floatwright {
namespace {

// ID, Date, then for each quantity: value, grade, symbol, QA/QC.
constexpr std::size_t kColumns = 10;
constexpr std::size_t kOfQuantity = 4;

struct Half {
  std::size_t column;
  std::string_view name;  // as the header's cell begins
  const char* series_id;
  Variable variable;
};
constexpr std::array kHalves{Half{2, "Water Level", "level", Variable::GaugeHeight},
                             Half{6, "Discharge", "discharge", Variable::Flow}};

using Units = std::array<UnitLine, kHalves.size()>;

// "Water Level / Niveau d'eau (m)": "m".
std::string_view unit_in(std::string_view cell) {
  const auto open = cell.rfind('('), close = cell.rfind(')');
  if (open == std::string_view::npos || close == std::string_view::npos || close < open) return {};
  return cell.substr(open + 1, close - open - 1);
}

Result<Units> units_of(const CsvFields& header, const std::string& where) {
  Units out;
  for (std::size_t i = 0; i < kHalves.size(); ++i) {
    const Half& half = kHalves[i];
    const std::string_view cell = header.size() == kColumns ? trimmed(header[half.column]) : std::string_view{};
    const auto unit = cell.starts_with(half.name) ? unit_line(half.variable, unit_in(cell)) : std::nullopt;
    if (!unit)
      return tl::unexpected(Failure{
          fmt::format("{}: line 1: {} columns are read, the {}th \"{} ... (unit)\" in a unit that is known; found {} "
                      "columns and \"{}\" there",
                      where, kColumns, half.column + 1, half.name, header.size(), printable(cell)),
          kExitBadData});
    out[i] = *unit;
  }
  return out;
}

void shelve_half(SeriesShelf& shelf, const CsvFields& row, Instant time, const Half& half, const UnitLine& unit,
                 const std::string& where, const std::string& place) {
  const std::string_view text = trimmed(row[half.column]);
  bool all_empty = true;
  for (std::size_t i = 0; i < kOfQuantity; ++i) all_empty = all_empty && trimmed(row[half.column + i]).empty();
  if (all_empty) return;  // the station has no such sensor, or it said nothing
  const std::size_t at = shelf.place_for(wsc_series(trimmed(row[0]), half.series_id, half.variable, where));
  Reading reading{.time = time, .si = {}, .marks = {}};
  if (const auto number = number_in(text)) reading.si = unit.offset + unit.factor * *number;
  if (!text.empty() && !reading.si)
    return shelf.leave_out(std::string{"series "} + half.series_id,
                           "the value \"" + printable(text) + "\" is not a finite number", place);
  for (std::size_t i = 1; i < kOfQuantity; ++i)
    add_wsc_marks(row[half.column + i], reading.marks, shelf.at(at).unknown_codes);
  shelf.add(at, reading);
}

void shelve(SeriesShelf& shelf, const CsvFields& row, const Units& units, const std::string& where,
            const std::string& place) {
  if (trimmed(row[0]).empty()) return shelf.leave_out("rows", "no station", place);
  const auto time = instant_in(trimmed(row[1]));
  if (!time) return shelf.leave_out("rows", "the time can't be read, first \"" + printable(row[1]) + "\"", place);
  for (std::size_t i = 0; i < kHalves.size(); ++i) shelve_half(shelf, row, *time, kHalves[i], units[i], where, place);
}

}  // namespace

bool is_wsc_datamart(std::string_view bytes) {
  return bytes.substr(0, 64).find("ID,Date,Water Level") != std::string_view::npos;
}

Result<GaugeAnswer> read_wsc_datamart(std::string_view bytes, const std::string& where) {
  Units units;
  return read_wsc_rows(
      bytes, where, [&](const CsvFields& header) { return units_of(header, where).map([&](Units u) { units = u; }); },
      [&](SeriesShelf& shelf, const CsvFields& row, const std::string& place) {
        shelve(shelf, row, units, where, place);
      });
}

}  // namespace floatwright
