#include "adapters/in/gauges/usgs_rdb/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_rdb/rdb_rows.hpp"
#include "adapters/in/gauges/usgs_rdb/zone_code.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

constexpr std::array kNoData{-999999.0};  // never sent in this form so far; never a reading either

// By a column that only they have.
constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kOtherFiles{
    {{"INDEP", "a rating (stage to discharge)"},
     {"measurement_nu", "a list of field measurements"},
     {"peak_dt", "a list of the highest flow of each year"},
     {"month_nu", "statistics of days over the years"},
     {"begin_date", "a list of the series of stations"},
     {"station_nm", "a list of stations"}}};

struct ValueColumn {
  std::size_t value = 0;
  std::optional<std::size_t> codes;
  std::string series, parameter, statistic;
  UnitLine unit;
  std::size_t shelf = 0;  // place of the station that the rows are of
  std::string last_codes;
  Marks last_marks;
};

bool is_code(std::string_view text) {
  return text.size() == 5 && text.find_first_not_of("0123456789") == std::string_view::npos;
}

// "107389_00060" or "01_00060_00003"; none: another column, such as one of codes.
std::optional<ValueColumn> value_column(std::string_view name) {
  const auto first = name.find('_'), second = name.find('_', first + 1);
  if (first == std::string_view::npos || first == 0) return std::nullopt;
  const std::string_view parameter =
      name.substr(first + 1, second == std::string_view::npos ? second : second - first - 1);
  const std::string_view statistic = second == std::string_view::npos ? "00000" : name.substr(second + 1);
  if (!is_code(parameter) || !is_code(statistic)) return std::nullopt;
  ValueColumn out;
  out.series = name.substr(0, first);
  out.parameter = parameter;
  out.statistic = statistic;
  return out;
}

class ValuesReader {
 public:
  ValuesReader(RdbRows& rows, const std::string& where) : rows_(rows), where_(where) {}

  void take_head() {
    agency_ = rows_.column("agency_cd");
    site_ = rows_.column("site_no");
    time_ = rows_.column("datetime");
    zone_ = rows_.column("tz_cd");
    station_.clear();
    values_.clear();
    not_used_.clear();
    for (std::size_t i = 0; i < rows_.columns().size(); ++i)
      if (auto column = value_column(rows_.columns()[i])) add_column(std::move(*column), i);
  }
  [[nodiscard]] bool can_read() const { return site_ && time_; }

  void take_row() {
    for (const std::string& parameter : not_used_) shelf_.not_used("parameter " + parameter);
    if (!rows_.fault().empty()) return shelf_.leave_out("rows", rows_.fault(), rows_.place());
    if (rows_.field(site_).empty()) return shelf_.leave_out("rows", "no station number", rows_.place());
    const std::string_view text = rows_.field(time_);
    const auto time = zone_ ? local_instant_in(text, rows_.field(zone_)) : date_label_in(text);
    if (!time)
      return shelf_.leave_out("rows",
                              zone_ ? fmt::format("the time can't be read, first \"{}\" with the zone \"{}\"",
                                                  printable(text), printable(rows_.field(zone_)))
                                    : fmt::format("the date can't be read, first \"{}\"", printable(text)),
                              rows_.place());
    find_station();
    for (ValueColumn& column : values_) take_value(column, *time);
  }
  [[nodiscard]] GaugeAnswer answer() && { return std::move(shelf_).answer(); }

 private:
  void add_column(ValueColumn column, std::size_t at) {
    const auto variable = variable_of(column.parameter);
    if (!variable) return not_used_.push_back(column.parameter);
    column.value = at;
    column.codes = rows_.column(fmt::format("{}_cd", rows_.columns()[at]));
    column.unit = *unit_line(*variable, usual_unit(column.parameter));
    if (const std::string remark = remark_on(column.parameter); !remark.empty()) shelf_.remark(remark);
    values_.push_back(std::move(column));
  }

  // Rows of one station stand together.
  void find_station() {
    const std::string_view agency = agency_ ? rows_.field(agency_) : "USGS", site = rows_.field(site_);
    if (station_ == site && station_agency_ == agency) return;
    station_ = site;
    station_agency_ = agency;
    for (ValueColumn& column : values_) {
      GaugeSeries head;
      head.station = station_key(agency, site);
      head.series_id = fmt::format("{}:{}:{}:{}:{}", agency, site, column.parameter, column.statistic, column.series);
      head.source = where_;
      head.variable = *variable_of(column.parameter);
      head.daily = !zone_;
      column.shelf = shelf_.place_for(head);
      column.last_codes.clear();
      column.last_marks = {};
    }
  }

  void take_value(ValueColumn& column, Instant time) {
    GaugeSeries& series = shelf_.at(column.shelf);
    const std::string_view codes = rows_.field(column.codes), text = rows_.field(column.value);
    if (text.empty() && codes.empty()) return;  // other columns have rows at this time
    const RowValue value = row_value(text, kNoData);
    if (value.broken) return shelf_.leave_out("series " + printable(series.series_id), *value.broken, rows_.place());
    if (codes != column.last_codes) {
      column.last_codes = codes;
      column.last_marks = {};
      add_marks(codes, column.last_marks, series.unknown_codes);
    }
    Reading reading{.time = time, .si = {}, .marks = value.marks};
    if (value.number) reading.si = column.unit.offset + column.unit.factor * *value.number;
    reading.marks.insert(column.last_marks);
    shelf_.add(column.shelf, reading);
  }

  RdbRows& rows_;
  const std::string& where_;
  SeriesShelf shelf_;
  std::optional<std::size_t> agency_, site_, time_, zone_;
  std::vector<ValueColumn> values_;
  std::vector<std::string> not_used_;
  std::string station_, station_agency_;
};

Failure no_readings(const RdbRows& rows, const std::string& where) {
  for (const auto& [column, what] : kOtherFiles)
    if (rows.column(column))
      return {fmt::format("{}: {}, which holds no readings of a gauge", where, what), kExitBadData};
  return {fmt::format("{}: no columns site_no and datetime, so no readings (the first column is \"{}\")", where,
                      printable(rows.columns().front())),
          kExitBadData};
}

}  // namespace

bool is_usgs_rdb(std::string_view bytes) { return begins_as_rdb(bytes); }

Result<GaugeAnswer> read_usgs_rdb(std::string_view bytes, const std::string& where) {
  auto rows = RdbRows::begin(bytes, where);
  if (!rows) return tl::unexpected(rows.error());
  ValuesReader reader(*rows, where);
  const auto take_head = [&] {
    reader.take_head();
    return reader.can_read();
  };
  if (rows->table() > 0 && !take_head()) return tl::unexpected(no_readings(*rows, where));
  for (int table = rows->table(); rows->next();) {
    if (rows->table() != table && !take_head()) return tl::unexpected(no_readings(*rows, where));
    table = rows->table();
    reader.take_row();
  }
  return std::move(reader).answer();
}

}  // namespace floatwright
