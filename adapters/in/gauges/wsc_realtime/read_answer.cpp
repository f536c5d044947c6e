#include "adapters/in/gauges/wsc_realtime/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/wsc_rows.hpp"
#include "adapters/in/gauges/wsc_words.hpp"

namespace floatwright {
namespace {

constexpr std::array<std::string_view, 4> kNeeded{"ID", "Date", "Parameter", "Value"};
constexpr std::array<std::string_view, 5> kOfMarks{"Qualifier", "Symbol", "Approval", "Grade", "Qualifiers"};

std::optional<Variable> variable_of_parameter(std::string_view parameter) {
  if (parameter == "46") return Variable::GaugeHeight;
  if (parameter == "47") return Variable::Flow;
  if (parameter == "5") return Variable::WaterTemperature;
  return std::nullopt;
}

struct Columns {
  std::array<std::size_t, 4> needed{};  // as kNeeded
  std::vector<std::size_t> marks;
};

std::optional<std::size_t> column(const CsvFields& header, std::string_view name) {
  for (std::size_t i = 0; i < header.size(); ++i)
    if (english_half(header[i]) == name) return i;
  return std::nullopt;
}

Result<Columns> columns_of(const CsvFields& header, const std::string& where) {
  Columns out;
  for (std::size_t i = 0; i < kNeeded.size(); ++i) {
    const auto found = column(header, kNeeded[i]);
    if (!found)
      return tl::unexpected(Failure{fmt::format("{}: line 1: no column \"{}\" in the header; the columns read are ID, "
                                                "Date, Parameter, Value and those of marks",
                                                where, kNeeded[i]),
                                    kExitBadData});
    out.needed[i] = *found;
  }
  for (const std::string_view name : kOfMarks)
    if (const auto found = column(header, name)) out.marks.push_back(*found);
  return out;
}

void shelve(SeriesShelf& shelf, const CsvFields& row, const Columns& columns, const std::string& where,
            const std::string& place) {
  const std::string_view station = trimmed(row[columns.needed[0]]), time_text = trimmed(row[columns.needed[1]]),
                         parameter = trimmed(row[columns.needed[2]]), value = trimmed(row[columns.needed[3]]);
  if (station.empty()) return shelf.leave_out("rows", "no station", place);
  const auto variable = variable_of_parameter(parameter);
  if (!variable) return shelf.not_used("parameter " + printable(parameter));
  const std::size_t at = shelf.place_for(wsc_series(station, std::string{parameter}, *variable, where));
  const std::string name = "series " + printable(parameter) + " of station " + printable(station);
  const auto time = instant_in(time_text);
  if (!time) return shelf.leave_out(name, "the time can't be read, first \"" + printable(time_text) + "\"", place);
  Reading reading{.time = *time, .si = number_in(value), .marks = {}};
  if (!value.empty() && !reading.si)
    return shelf.leave_out(name, "the value \"" + printable(value) + "\" is not a finite number", place);
  for (const std::size_t i : columns.marks) add_wsc_marks(row[i], reading.marks, shelf.at(at).unknown_codes);
  shelf.add(at, reading);
}

}  // namespace

bool is_wsc_realtime(std::string_view bytes) {
  return bytes.substr(0, 64).find("ID,Date,Parameter") != std::string_view::npos;
}

Result<GaugeAnswer> read_wsc_realtime(std::string_view bytes, const std::string& where) {
  Columns columns;
  return read_wsc_rows(
      bytes, where,
      [&](const CsvFields& header) { return columns_of(header, where).map([&](Columns c) { columns = c; }); },
      [&](SeriesShelf& shelf, const CsvFields& row, const std::string& place) {
        shelve(shelf, row, columns, where, place);
      });
}

}  // namespace floatwright
