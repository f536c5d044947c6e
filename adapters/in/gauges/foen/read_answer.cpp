#include "adapters/in/gauges/foen/read_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/service_error.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kCell, kPayload };
enum Row : int { kCellEnd, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/payload", kPayload}, {"/payload/*/*", kCell}},
                                {{"/payload/*/*", kCellEnd}, {"", kWhole}}};
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

std::optional<Instant> instant_of(double seconds) {
  constexpr double kYear1800 = -5364662400.0, kYear2200 = 7258118400.0;
  if (!(seconds >= kYear1800 && seconds <= kYear2200) || std::trunc(seconds) != seconds) return std::nullopt;
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
    if (row.row == kWhole)
      payload_ = row[kPayload].kind;
    else
      take_cell(row);
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (payload_ != Kind::Object && !(payload_ == Kind::List && columns_.empty())) {  // an empty list: nothing found
      const auto error = service_error(bytes);
      return tl::unexpected(
          Failure{where_ + ": " +
                      (error ? "the service answered with an error, " + *error
                             : "no columns at /payload; ask with timeseriesformat=rows, which gives columns"),
                  kExitBadData});
    }
    for (const Column& column : columns_)
      if (column.key == kTimes) take_times(column);
    for (Column& column : columns_) {
      if (column.key != kTimes) take_column(column);
      column = {};
    }
    return std::move(shelf_).answer();
  }

 private:
  void take_cell(const JsonRow& row) {
    const std::string* const key = row.steps[1].key;
    if (last_key_ != key || columns_.empty()) {
      const std::size_t likely = columns_.empty() ? 0 : columns_.back().values.size();
      columns_.push_back({.key = key == nullptr ? "" : *key, .values = {}, .broken = {}});
      columns_.back().values.reserve(likely);
      last_key_ = key;
    }
    Column& column = columns_.back();
    const JsonValue& cell = row[kCell];
    if (!cell.is(Kind::Number) && !cell.is(Kind::Null) && column.broken.empty()) column.broken = row.place();
    column.values.push_back(cell.is(Kind::Number) ? cell.number : kNull);
  }

  void take_times(const Column& column) {
    times_.reserve(column.values.size());
    for (const double seconds : column.values) times_.push_back(instant_of(seconds));
    for (std::size_t i = 0; i < times_.size(); ++i)
      if (!times_[i])
        shelf_.leave_out("times", "not whole seconds since 1970", fmt::format("/payload/timestamp/{}", i));
  }

  void take_column(const Column& column) {
    const std::string name = "column " + shown(column.key);
    const auto bar = column.key.find('|');
    if (bar == std::string::npos || bar == 0)
      return shelf_.leave_out(name, "it does not name a station and a parameter", "", column.values.size());
    const std::string parameter_name = column.key.substr(bar + 1);
    const auto* const parameter = std::ranges::find(kParameters, parameter_name, &Parameter::name);
    if (parameter == kParameters.end())
      return shelf_.not_used("parameter " + shown(parameter_name), column.values.size());
    if (!column.broken.empty())
      return shelf_.leave_out(name, "a value is neither a number nor null", column.broken, column.values.size());
    if (column.values.size() != times_.size())
      return shelf_.leave_out(name, fmt::format("it is not as long as the {} times", times_.size()), "",
                              column.values.size());
    const std::size_t at =
        shelf_.place_for(series_head("foen:" + column.key.substr(0, bar), parameter_name, parameter->variable, where_));
    shelf_.at(at).readings.reserve(column.values.size());
    for (std::size_t i = 0; i < column.values.size(); ++i)
      if (times_[i]) shelf_.add(at, reading_of(*times_[i], column.values[i], parameter->factor));
  }

  static Reading reading_of(Instant time, double value, double factor) {
    Reading out{.time = time, .si = {}, .marks = {Mark::Provisional}};
    if (!std::isnan(value)) out.si = factor * value;
    return out;
  }

  const std::string& where_;
  SeriesShelf shelf_;
  std::vector<Column> columns_;
  std::vector<std::optional<Instant>> times_;
  const std::string* last_key_ = nullptr;
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
