#include "adapters/in/gauges/csv_gauge/read_csv_gauge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "adapters/in/calendar/clock_text.hpp"
#include "adapters/in/files/csv_rows.hpp"
#include "adapters/in/files/unit_spelling.hpp"
#include "adapters/in/gauges/csv_gauge/zone_clock.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/text_place.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

// What loggers and agencies write for "no value"; no river, stage or temperature is one of these.
constexpr std::array kUsualNoData{-777.0, -999.0, -6999.0, -7999.0, -9999.0, -99999.0, -999999.0};

struct Column {
  std::size_t index = 0;
  std::string label;
  UnitLine unit;
  Variable quantity = Variable::Flow;
  std::array<std::optional<std::size_t>, 2> shelf;  // of instants, of days
};

std::string label_of(const CsvColumn& column) {
  return column.name.empty() ? fmt::format("column {}", column.place) : column.name;
}

std::optional<double> number_of(std::string_view text, bool decimal_comma) {
  if (text.starts_with('+')) text.remove_prefix(1);
  if (!decimal_comma) return number_in(text);
  if (text.find('.') != std::string_view::npos) return std::nullopt;
  std::string with_point{text};
  std::replace(with_point.begin(), with_point.end(), ',', '.');
  return number_in(with_point);
}

class CsvGaugeReader {
 public:
  CsvGaugeReader(std::string_view bytes, const std::string& where, const CsvGauge& gauge)
      : gauge_(gauge), where_(where), rows_(after_lines(bytes, gauge.skip_lines), gauge.separator) {}

  // Why nothing can be read, a phrase; empty: it was.
  std::string read() {
    if (!gauge_.time_zone.empty() && !(clock_ = ZoneClock::of(gauge_.time_zone)))
      return "no time zone \"" + printable(gauge_.time_zone) + "\" in the system's database";
    if (std::string wrong = find_columns(); !wrong.empty()) return wrong;
    while (rows_.next(fields_))
      if (!trimmed(fields_.front()).starts_with('#')) take_row();
    if (shown_twice_ > 0)
      shelf_.doubt(fmt::format("{}: {} row{} in an hour that the clock showed twice; told apart by their order",
                               gauge_.station, shown_twice_, shown_twice_ == 1 ? "" : "s"));
    return {};
  }
  [[nodiscard]] GaugeAnswer answer() && { return std::move(shelf_).answer(); }

 private:
  static std::string_view after_lines(std::string_view bytes, int lines) {
    for (; lines > 0 && !bytes.empty(); --lines) bytes.remove_prefix(std::min(bytes.find('\n'), bytes.size() - 1) + 1);
    return bytes;
  }

  std::string find_columns() {
    const bool by_name = !gauge_.time.name.empty() || std::any_of(gauge_.columns.begin(), gauge_.columns.end(),
                                                                  [](const auto& c) { return !c.column.name.empty(); });
    if (by_name && !rows_.next(fields_)) return "no line with the names of columns";
    const std::vector<std::string> header = by_name ? fields_ : std::vector<std::string>{};
    const auto time = index_of(gauge_.time, header);
    if (!time) return no_column(gauge_.time, header);
    time_ = *time;
    for (const CsvQuantity& declared : gauge_.columns) {
      const auto index = index_of(declared.column, header);
      if (!index) return no_column(declared.column, header);
      const auto unit = unit_line(declared.quantity, declared.unit);
      if (!unit)
        return fmt::format("the unit \"{}\" is not known for {}", printable(declared.unit), word_for(declared.quantity));
      columns_.push_back({.index = *index,
                          .label = label_of(declared.column),
                          .unit = *unit,
                          .quantity = declared.quantity,
                          .shelf = {}});
    }
    return {};
  }

  static std::optional<std::size_t> index_of(const CsvColumn& column, const std::vector<std::string>& header) {
    if (column.name.empty())
      return column.place > 0 ? std::optional{static_cast<std::size_t>(column.place) - 1} : std::nullopt;
    const auto found = std::find_if(header.begin(), header.end(),
                                    [&](const std::string& name) { return trimmed(name) == column.name; });
    if (found == header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - header.begin());
  }

  [[nodiscard]] std::string no_column(const CsvColumn& column, const std::vector<std::string>& header) const {
    std::string names;
    for (const std::string& name : header) names += (names.empty() ? "" : ", ") + printable(trimmed(name));
    return fmt::format("line {}: no column \"{}\"; there are {}", line(), label_of(column), names);
  }

  [[nodiscard]] int line() const { return rows_.line() + gauge_.skip_lines; }
  [[nodiscard]] std::string place() const { return fmt::format("line {}", line()); }
  [[nodiscard]] std::string_view cell(std::size_t index) const {
    return index < fields_.size() ? trimmed(fields_[index]) : std::string_view{};
  }

  struct RowTime {
    Instant time{};
    bool is_day = false;
  };

  void take_row() {
    const auto leave_out = [&](const std::string& why) { shelf_.leave_out(gauge_.station, why, place()); };
    if (!rows_.fault().empty()) return leave_out(rows_.fault());
    const auto written = written_time();
    if (!written) return leave_out("the time can't be read, first \"" + printable(cell(time_)) + "\"");
    const auto time = placed(*written);
    if (!time) return;
    for (Column& column : columns_) take_value(column, *time);
  }

  struct Written {
    WrittenTime time;
    bool has_hours = false;
  };
  [[nodiscard]] std::optional<Written> written_time() const {
    const std::string_view text = cell(time_);
    if (!gauge_.time_format.empty()) {
      const auto time = written_time_by(gauge_.time_format, text);
      return time ? std::optional{Written{*time, has_hours(gauge_.time_format)}} : std::nullopt;
    }
    constexpr std::size_t kDate = 10;  // "2026-05-13"
    if (text.size() == kDate) {
      const auto day = date_label_in(text);
      return day ? std::optional{Written{{*day, std::nullopt}, false}} : std::nullopt;
    }
    std::string iso{text};
    if (iso.size() > kDate && iso[kDate] == ' ') iso[kDate] = 'T';
    const auto time = written_time_in(iso);
    return time ? std::optional{Written{*time, true}} : std::nullopt;
  }

  // On the world's clock. None, and told: it can't be placed there.
  std::optional<RowTime> placed(const Written& written) {
    if (gauge_.daily || !written.has_hours) return RowTime{std::chrono::floor<std::chrono::days>(written.time.local), true};
    if (written.time.east) return RowTime{written.time.local - *written.time.east, false};
    if (!clock_) {
      shelf_.leave_out(gauge_.station, "a time without an offset, and no time_zone is declared", place());
      return std::nullopt;
    }
    const auto shown_time = clock_->instant_of(written.time.local);
    if (shown_time.twice) ++shown_twice_;
    if (shown_time.instant) return RowTime{*shown_time.instant, false};
    shelf_.leave_out(gauge_.station, "a time that the clock of " + gauge_.time_zone + " left out when it was put on",
                     place());
    return std::nullopt;
  }

  void take_value(Column& column, const RowTime& time) {
    const std::string_view text = cell(column.index);
    if (text.empty() && column.index >= fields_.size()) return;  // the row ends before this column
    Reading reading{.time = time.time, .si = {}, .marks = {}};
    if (!is_missing(text)) {
      const auto number = number_of(text, gauge_.decimal_comma);
      const auto leave_out = [&](const std::string& why) {
        shelf_.leave_out(gauge_.station + ", " + column.label, why, place());
      };
      if (!number) return leave_out("the value \"" + printable(text) + "\" is not a finite number");
      if (std::find(kUsualNoData.begin(), kUsualNoData.end(), *number) != kUsualNoData.end())
        return leave_out(fmt::format("{} looks like a code for no value; declare it in \"missing\"", *number));
      reading.si = column.unit.offset + column.unit.factor * *number;
    }
    shelf_.add(shelf_for(column, time.is_day), reading);
  }

  [[nodiscard]] bool is_missing(std::string_view text) const {
    if (text.empty()) return true;
    const auto number = number_of(text, gauge_.decimal_comma);
    return std::any_of(gauge_.missing.begin(), gauge_.missing.end(),
                       [&](const std::string& code) { return text == code || (number && number == number_in(code)); });
  }

  std::size_t shelf_for(Column& column, bool is_day) {
    auto& at = column.shelf[is_day ? 1 : 0];
    if (!at) {
      GaugeSeries head;
      head.station = gauge_.station;
      head.series_id = fmt::format("{}:{}", word_for(column.quantity), column.label);
      head.sensor = column.label;
      head.source = where_;
      head.variable = column.quantity;
      head.daily = is_day;
      at = shelf_.place_for(head);
    }
    return *at;
  }

  const CsvGauge& gauge_;
  const std::string& where_;
  CsvRows rows_;
  std::vector<std::string> fields_;
  std::size_t time_ = 0;
  std::vector<Column> columns_;
  std::optional<ZoneClock> clock_;
  int shown_twice_ = 0;
  SeriesShelf shelf_;
};

}  // namespace

Result<GaugeAnswer> read_csv_gauge(std::string_view bytes, const std::string& where, const CsvGauge& gauge) {
  const auto failure = [&](const std::string& what) {
    return tl::unexpected(Failure{where + ": " + what, kExitBadData});
  };
  if (trimmed(bytes).empty()) return failure("empty");
  if (const auto zero = bytes.find('\0'); zero != std::string_view::npos)
    return failure(line_and_column(bytes, zero) + ": a zero byte, so this is no plain text; save it as CSV in UTF-8");
  CsvGaugeReader reader(bytes, where, gauge);
  if (const std::string wrong = reader.read(); !wrong.empty()) return failure(wrong);
  return std::move(reader).answer();
}

}  // namespace floatwright
