#include "adapters/in/gauges/foen/read_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <limits>
#include <vector>

#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/service_error.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kCell, kList, kPayload };
enum Row : int { kCellEnd, kColumn, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/payload", kPayload}, {"/payload/*", kList}, {"/payload/*/*", kCell}},
                                {{"/payload/*/*", kCellEnd}, {"/payload/*", kColumn}, {"", kWhole}}};
  return kShape;
}

constexpr std::string_view kTimes = "timestamp";
constexpr double kNull = std::numeric_limits<double>::quiet_NaN();

struct Parameter {
  std::string_view name;
  Variable variable;
  double factor;  // SI is factor times value
};
constexpr std::array kParameters{Parameter{"flow", Variable::Flow, 1.0}, Parameter{"flow_ls", Variable::Flow, 0.001},
                                 Parameter{"height", Variable::GaugeHeight, 1.0},
                                 Parameter{"temperature", Variable::WaterTemperature, 1.0}};

constexpr Instant kNoTime = Instant::min();

Instant instant_of(double seconds) {
  constexpr double kYear1800 = -5364662400.0, kYear2200 = 7258118400.0;
  if (!(seconds >= kYear1800 && seconds <= kYear2200) || std::trunc(seconds) != seconds) return kNoTime;
  return Instant{std::chrono::seconds{static_cast<std::int64_t>(seconds)}};
}

struct Column {
  std::string key;
  std::vector<double> values;  // not a number: null
  std::string broken;          // place of the first value that is neither a number nor null
};

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kCellEnd) take_cell(row);
    if (row.row == kColumn) end_column(row);
    if (row.row == kWhole) payload_ = row[kPayload].kind;
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (payload_ != Kind::Object && !(payload_ == Kind::List && !has_rows_)) {  // an empty list: nothing found
      const auto error = service_error(bytes);
      return tl::unexpected(
          Failure{where_ + ": " +
                      (error ? "the service answered with an error, " + *error
                             : "no columns at /payload; ask with timeseriesformat=rows, which gives columns"),
                  kExitBadData});
    }
    for (const Column& column : waiting_) take_column(column);
    return std::move(shelf_).answer();
  }

 private:
  void take_cell(const JsonRow& row) {
    const JsonValue& cell = row[kCell];
    if (!cell.is(Kind::Number) && !cell.is(Kind::Null) && column_.broken.empty()) column_.broken = row.place();
    column_.values.push_back(cell.is(Kind::Number) ? cell.number : kNull);
  }

  // The times come first, as it seems; columns before them wait.
  void end_column(const JsonRow& row) {
    const std::string* const key = row.steps.back().key;
    has_rows_ = has_rows_ || key == nullptr;
    column_.key = key == nullptr ? "" : *key;
    if (!row[kList].is(Kind::List) && column_.broken.empty()) column_.broken = row.place();
    if (column_.key == kTimes)
      take_times();
    else if (times_.empty())
      waiting_.push_back(column_);
    else
      take_column(column_);
    column_.values.clear();
    column_.broken.clear();
  }

  void take_times() {
    times_.reserve(column_.values.size());
    for (std::size_t i = 0; i < column_.values.size(); ++i) {
      times_.push_back(instant_of(column_.values[i]));
      if (times_.back() == kNoTime)
        shelf_.leave_out("times", "not whole seconds since 1970", fmt::format("/payload/timestamp/{}", i));
    }
  }

  void take_column(const Column& column) {
    const std::string name = "column " + printable(column.key);
    const std::size_t rows = column.values.size();
    const auto bar = column.key.find('|');
    if (bar == std::string::npos || bar == 0)
      return shelf_.leave_out(name, "it does not name a station and a parameter", "", rows);
    const std::string parameter_name = column.key.substr(bar + 1);
    const auto* const parameter = std::ranges::find(kParameters, parameter_name, &Parameter::name);
    if (parameter == kParameters.end()) return shelf_.not_used("parameter " + printable(parameter_name), rows);
    if (!column.broken.empty())
      return shelf_.leave_out(name, "a value is neither a number nor null", column.broken, rows);
    if (rows != times_.size())
      return shelf_.leave_out(name, fmt::format("it is not as long as the {} times", times_.size()), "", rows);
    const std::size_t at =
        shelf_.place_for(series_head("foen:" + column.key.substr(0, bar), parameter_name, parameter->variable, where_));
    shelf_.at(at).readings.reserve(rows);
    for (std::size_t i = 0; i < rows; ++i)
      if (times_[i] != kNoTime) shelf_.add(at, reading_of(times_[i], column.values[i], parameter->factor));
  }

  static Reading reading_of(Instant time, double value, double factor) {
    Reading out{.time = time, .si = {}, .marks = {Mark::Provisional}};
    if (!std::isnan(value)) out.si = factor * value;
    return out;
  }

  const std::string& where_;
  SeriesShelf shelf_;
  Column column_;  // the one that is being read
  std::vector<Column> waiting_;
  std::vector<Instant> times_;
  bool has_rows_ = false;
  Kind payload_ = Kind::Absent;
};

}  // namespace

bool is_foen(std::string_view bytes) {
  return stands_near_an_end(bytes, "api.existenz.ch#hydro") ||
         (stands_near_an_end(bytes, "existenz.ch") && stands_near_an_end(bytes, "|temperature\""));
}

Result<GaugeAnswer> read_foen(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
