#include "adapters/in/gauges/foen/read_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
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

struct Parameter {
  std::string_view name;
  Variable variable;
  double factor;  // SI is factor times value
};
constexpr std::array kParameters{Parameter{"flow", Variable::Flow, 1.0}, Parameter{"flow_ls", Variable::Flow, 0.001},
                                 Parameter{"height", Variable::GaugeHeight, 1.0},
                                 Parameter{"temperature", Variable::WaterTemperature, 1.0}};

std::optional<Instant> instant_of(const std::optional<double>& seconds) {
  constexpr double kYear1800 = -5364662400.0, kYear2200 = 7258118400.0;
  if (!seconds || *seconds < kYear1800 || *seconds > kYear2200 || std::trunc(*seconds) != *seconds) return std::nullopt;
  return Instant{std::chrono::seconds{static_cast<std::int64_t>(*seconds)}};
}

struct Column {
  std::string key;
  std::vector<std::optional<double>> values;
  std::string broken;  // place of the first value that is neither a number nor null
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
    const auto times = std::ranges::find(columns_, kTimes, &Column::key);
    for (const Column& column : columns_)
      if (column.key != kTimes) take_column(column, times == columns_.end() ? Column{} : *times);
    return std::move(shelf_).answer();
  }

 private:
  void take_cell(const JsonRow& row) {
    const std::string* const key = row.steps[1].key;
    if (last_key_ != key || columns_.empty()) {
      columns_.push_back({.key = key == nullptr ? "" : *key, .values = {}, .broken = {}});
      last_key_ = key;
    }
    Column& column = columns_.back();
    const JsonValue& cell = row[kCell];
    if (!cell.is(Kind::Number) && !cell.is(Kind::Null) && column.broken.empty()) column.broken = row.place();
    column.values.push_back(cell.is(Kind::Number) ? std::optional{cell.number} : std::nullopt);
  }

  void take_column(const Column& column, const Column& times) {
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
    if (column.values.size() != times.values.size())
      return shelf_.leave_out(name, fmt::format("it is not as long as the {} times", times.values.size()), "",
                              column.values.size());
    const std::size_t at =
        shelf_.place_for(series_head("foen:" + column.key.substr(0, bar), parameter_name, parameter->variable, where_));
    for (std::size_t i = 0; i < column.values.size(); ++i)
      take_reading(at, times.values[i], column.values[i], parameter->factor, i);
  }

  void take_reading(std::size_t at, const std::optional<double>& seconds, const std::optional<double>& value,
                    double factor, std::size_t index) {
    const auto time = instant_of(seconds);
    if (!time)
      return shelf_.leave_out("times", "not whole seconds since 1970", fmt::format("/payload/timestamp/{}", index));
    Reading reading{.time = *time, .si = {}, .marks = {Mark::Provisional}};
    if (value) reading.si = factor * *value;
    shelf_.add(at, reading);
  }

  const std::string& where_;
  SeriesShelf shelf_;
  std::vector<Column> columns_;
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
