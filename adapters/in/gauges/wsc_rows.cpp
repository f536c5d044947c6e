#include "adapters/in/gauges/wsc_rows.hpp"

#include <fmt/format.h>

#include <optional>

#include "adapters/in/files/csv_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

// Why the bytes can't be rows; none: they may be.
std::optional<std::string> not_even_rows(std::string_view bytes) {
  const std::string_view text = trimmed(bytes);
  if (text.empty()) return "empty; ask the service again";
  if (text.front() != '<') return std::nullopt;
  return fmt::format(
      "a web page or XML, not CSV (it begins \"{}\"); the service may have moved, or the request was sent "
      "elsewhere",
      printable(text.substr(0, 20)));
}

}  // namespace

Result<GaugeAnswer> read_wsc_rows(
    std::string_view bytes, const std::string& where, const std::function<Result<void>(const CsvFields&)>& header,
    const std::function<void(SeriesShelf&, const CsvFields&, const std::string& place)>& shelve) {
  if (const auto wrong = not_even_rows(bytes)) return tl::unexpected(Failure{where + ": " + *wrong, kExitBadData});
  CsvRows rows(bytes);
  CsvFields fields;
  (void)rows.next(fields);
  if (const auto sound = header(fields); !sound) return tl::unexpected(sound.error());
  const std::size_t columns = fields.size();
  SeriesShelf shelf;
  while (rows.next(fields)) {
    const std::string place = fmt::format("line {}", rows.line());
    if (!rows.fault().empty())
      shelf.leave_out("rows", rows.fault(), place);
    else if (fields.size() != columns)
      shelf.leave_out("rows", fmt::format("{} fields where the header has {}", fields.size(), columns), place);
    else
      shelve(shelf, fields, place);
  }
  return std::move(shelf).answer();
}

}  // namespace floatwright
