#include "adapters/in/gauges/nve/read_answer.hpp"

#include <fmt/format.h>

#include <chrono>
#include <optional>
#include <set>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kTime, kValue, kCorrection, kQuality, kStation, kName, kParameter, kVersion, kMethod, kUnit, kData };
enum Row : int { kObservation, kSeries, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/data", kData},
                                 {"/data/*/stationId", kStation},
                                 {"/data/*/stationName", kName},
                                 {"/data/*/parameter", kParameter},
                                 {"/data/*/serieVersionNo", kVersion},
                                 {"/data/*/method", kMethod},
                                 {"/data/*/unit", kUnit},
                                 {"/data/*/observations/*/time", kTime},
                                 {"/data/*/observations/*/value", kValue},
                                 {"/data/*/observations/*/correction", kCorrection},
                                 {"/data/*/observations/*/quality", kQuality}},
                                {{"/data/*/observations/*", kObservation}, {"/data/*", kSeries}, {"", kWhole}}};
  return kShape;
}

std::optional<Variable> variable_of_parameter(std::string_view parameter) {
  if (parameter == "1000") return Variable::GaugeHeight;
  if (parameter == "1001") return Variable::Flow;
  if (parameter == "1003") return Variable::WaterTemperature;
  return std::nullopt;
}

std::string as_text(const JsonValue& value) {
  return value.is(Kind::Number) ? fmt::format("{}", value.number) : value.text;
}

class AnswerReader {
 public:
  AnswerReader(const std::string& where, bool daily) : where_(where), daily_(daily) {}

  void take(const JsonRow& row) {
    if (row.row == kObservation) take_observation(row);
    if (row.row == kSeries) take_series(row);
    if (row.row == kWhole) data_ = row[kData];
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (const auto wrong = why_no_list(data_, "/data", bytes, where_)) return tl::unexpected(*wrong);
    return std::move(shelf_).answer();
  }

 private:
  // Its series is told before or after it, so its value is kept as it was sent.
  void take_observation(const JsonRow& row) {
    const auto time = instant_in(row[kTime].text);
    const RowValue value = row_value(row[kValue], {});
    if (!time || value.broken)
      return shelf_.leave_out("observations",
                              time ? *value.broken : "the time can't be read, first \"" + printable(row[kTime].text) + "\"",
                              row.place());
    Reading reading{.time = *time, .si = value.number, .marks = {}};
    if (daily_) reading.time = std::chrono::floor<std::chrono::days>(*time);
    if (row[kCorrection].is(Kind::Number) && row[kCorrection].number > 0) reading.marks.insert(Mark::Estimated);
    add_quality(row[kQuality], reading.marks);
    as_sent_.push_back(reading);
  }

  // 0 unknown, 1 uncontrolled, 2 controlled once, 3 controlled twice.
  void add_quality(const JsonValue& quality, Marks& marks) {
    if (!quality.is(Kind::Number) || quality.number == 0) return;
    if (quality.number == 1 || quality.number == 2) return marks.insert(Mark::Provisional);
    if (quality.number == 3) return marks.insert(Mark::Approved);
    marks.insert(Mark::Unknown);
    unknown_.insert(fmt::format("quality {}", quality.number));
  }

  void take_series(const JsonRow& row) {
    const std::vector<Reading> readings = std::exchange(as_sent_, {});
    const std::set<std::string> unknown = std::exchange(unknown_, {});
    const std::string parameter = as_text(row[kParameter]);
    if (row[kStation].text.empty() || parameter.empty())
      return shelf_.leave_out("series", "no stationId with a parameter, so no readings", row.place(), readings.size());
    const auto variable = variable_of_parameter(parameter);
    if (!variable) return shelf_.not_used("parameter " + printable(parameter), readings.size());
    const auto unit = unit_line(*variable, row[kUnit].text);
    if (!unit)
      return shelf_.leave_out("parameter " + printable(parameter) + " of station " + printable(row[kStation].text),
                              fmt::format("the unit \"{}\" is not known", printable(row[kUnit].text)), row.place(),
                              readings.size());
    const std::size_t at = shelf_.place_for(head_of(row, parameter, *variable));
    shelf_.at(at).unknown_codes.insert(unknown.begin(), unknown.end());
    shelf_.at(at).readings.reserve(readings.size());
    for (Reading reading : readings) {
      if (reading.si) reading.si = unit->offset + unit->factor * *reading.si;
      shelf_.add(at, reading);
    }
  }

  [[nodiscard]] GaugeSeries head_of(const JsonRow& row, const std::string& parameter, Variable variable) const {
    const std::string id =
        fmt::format("{}:{}:{}{}", parameter, as_text(row[kVersion]), row[kMethod].text, daily_ ? ":day" : "");
    GaugeSeries out = series_head("nve:" + row[kStation].text, id, variable, where_);
    out.sensor = row[kMethod].text;
    out.station_name = row[kName].text;
    out.daily = daily_;
    return out;
  }

  const std::string& where_;
  bool daily_;
  SeriesShelf shelf_;
  std::vector<Reading> as_sent_;
  std::set<std::string> unknown_;
  JsonValue data_;
};

// The answer repeats the request it answers: a day is 1440 minutes.
bool is_of_days(std::string_view bytes) {
  return stands_near_an_end(bytes, "ResolutionTime=1440") || stands_near_an_end(bytes, "ResolutionTime=day");
}

}  // namespace

bool is_nve(std::string_view bytes) {
  return stands_near_an_end(bytes, "hydapi.nve.no") ||
         (stands_near_an_end(bytes, "\"stationId\"") && stands_near_an_end(bytes, "\"serieVersionNo\""));
}

Result<GaugeAnswer> read_nve(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where, is_of_days(bytes));
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
