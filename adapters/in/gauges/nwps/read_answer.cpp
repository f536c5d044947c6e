#include "adapters/in/gauges/nwps/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <cctype>
#include <optional>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/service_error.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

// Of both columns the slots follow one another in the same order.
enum Slot : int {
  kPedts,
  kIssued,
  kPrimaryName,
  kSecondaryName,
  kPrimaryUnit,
  kSecondaryUnit,
  kTime,
  kPrimary,
  kSecondary,
  kData,
  kGauge,
  kGaugeName,
  kStatusTime,
  kStatusPrimary,
  kStatusSecondary,
  kStatusPrimaryUnit,
  kStatusSecondaryUnit
};
enum Row : int { kPoint, kObserved, kForecast, kWhole };

std::vector<JsonPath> block_at(const std::string& at) {
  return {{at + "/pedts", kPedts},
          {at + "/issuedTime", kIssued},
          {at + "/primaryName", kPrimaryName},
          {at + "/secondaryName", kSecondaryName},
          {at + "/primaryUnits", kPrimaryUnit},
          {at + "/secondaryUnits", kSecondaryUnit},
          {at + "/data", kData},
          {at + "/data/*/validTime", kTime},
          {at + "/data/*/primary", kPrimary},
          {at + "/data/*/secondary", kSecondary}};
}

const JsonShape& answer_shape() {
  static const JsonShape kShape = [] {
    std::vector<JsonPath> values{{"/lid", kGauge},
                                 {"/name", kGaugeName},
                                 {"/status/observed/validTime", kStatusTime},
                                 {"/status/observed/primary", kStatusPrimary},
                                 {"/status/observed/secondary", kStatusSecondary},
                                 {"/status/observed/primaryUnit", kStatusPrimaryUnit},
                                 {"/status/observed/secondaryUnit", kStatusSecondaryUnit}};
    for (const char* const at : {"/observed", "/forecast", ""}) {
      const auto block = block_at(at);
      values.insert(values.end(), block.begin(), block.end());
    }
    return JsonShape{values,
                     {{"/observed", kObserved},
                      {"/forecast", kForecast},
                      {"/observed/data/*", kPoint},
                      {"/forecast/data/*", kPoint},
                      {"/data/*", kPoint},
                      {"", kWhole}}};
  }();
  return kShape;
}

struct Column {
  Variable variable;
  UnitLine unit;
};

// None: a pool's elevation or another quantity that is not used here.
std::optional<Variable> variable_named(std::string_view name) {
  const std::string lower = lower_case(name);
  if (lower == "stage") return Variable::GaugeHeight;
  if (lower == "flow") return Variable::Flow;
  return std::nullopt;
}

std::optional<Column> column_in(Variable variable, std::string_view unit) {
  const auto line = unit_line(variable, unit);
  return line ? std::optional{Column{variable, *line}} : std::nullopt;
}

// Where no name stands beside the unit.
std::optional<Column> column_in(std::string_view unit) {
  const auto stage = column_in(Variable::GaugeHeight, unit);
  return stage ? stage : column_in(Variable::Flow, unit);
}

// "gauges/FIHM1/..." or "gauges_FIHM1_...": the letters and digits behind the last "gauges" and the sign after it.
std::string gauge_in(std::string_view where) {
  constexpr std::string_view kBefore = "gauges";
  const auto found = where.rfind(kBefore);
  if (found == std::string_view::npos) return {};
  std::string out;
  for (const char c : where.substr(std::min(where.size(), found + kBefore.size() + 1))) {
    if (std::isalnum(static_cast<unsigned char>(c)) == 0) break;
    out += c;
  }
  return out;
}

constexpr double kMissing = -999.0;  // and whatever is lower

struct Point {
  Instant time{};
  std::array<double, 2> columns{};  // as sent
};

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where), gauge_(gauge_in(where)) {}

  void take(const JsonRow& row) {
    if (row.row == kPoint) take_point(row, {kTime, kPrimary, kSecondary});
    if (row.row == kObserved) take_block(row, "observed");
    if (row.row == kForecast) take_block(row, "forecast");
    if (row.row == kWhole) take_whole(row);
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (!is_block_) {
      const auto error = service_error(bytes);
      return tl::unexpected(
          Failure{where_ + ": " +
                      (error ? "the service answered with an error, " + *error
                             : "no stage or flow: nothing at /observed, /forecast, /data or /status/observed"),
                  kExitBadData});
    }
    GaugeAnswer out = std::move(shelf_).answer();
    if (gauge_.empty() && !out.series.empty()) {
      const std::string told = "the answer does not name its gauge; a file's name tells it as gauges_ID_stageflow.json";
      out.notes.push_back(told);
      out.doubts.push_back(told);
    }
    return out;
  }

 private:
  // A value that is null or left out is missing; a time in year 1 is no point at all.
  void take_point(const JsonRow& row, const std::array<Slot, 3>& slots) {
    const std::string& written = row[slots[0]].text;
    if (written.starts_with("0001-")) return;
    const auto time = instant_in(written);
    if (!time)
      return shelf_.leave_out("points", "the time can't be read, first \"" + printable(written) + "\"", row.place());
    Point point{.time = *time, .columns = {kMissing, kMissing}};
    for (std::size_t i = 0; i < point.columns.size(); ++i) {
      const JsonValue& value = row[slots[i + 1]];
      if (value.is(Kind::Number)) point.columns[i] = value.number;
      if (value.is(Kind::Text) || value.is(Kind::Boolean) || value.is(Kind::List) || value.is(Kind::Object))
        return shelf_.leave_out("points", "a value is no number", row.place());
    }
    points_.push_back(point);
  }

  // The blocks of a gauge without a forecast are {}.
  void take_block(const JsonRow& block, const std::string& kind) {
    is_block_ = true;
    const std::array slots{std::pair{kPrimaryName, kPrimaryUnit}, std::pair{kSecondaryName, kSecondaryUnit}};
    for (std::size_t i = 0; i < slots.size(); ++i)
      take_column(i, block[slots[i].first].text, block[slots[i].second].text, kind, block);
    points_.clear();
  }

  void take_column(std::size_t index, const std::string& name, const std::string& unit, const std::string& kind,
                   const JsonRow& block) {
    if (points_.empty() || (name.empty() && unit.empty())) return;
    const auto variable = variable_named(name);
    if (!variable) return shelf_.not_used(kind + " \"" + printable(name) + "\"", points_.size());
    const auto column = column_in(*variable, unit);
    if (!column)
      return shelf_.leave_out(kind + " " + printable(name), fmt::format("the unit \"{}\" is not known", printable(unit)),
                              block.place(), points_.size());
    const auto issued = instant_in(block[kIssued].text);
    if (kind == "forecast" && !issued)
      return shelf_.leave_out("forecast " + printable(name),
                              "the time of issue can't be read (\"" + printable(block[kIssued].text) + "\")", block.place(),
                              points_.size());
    GaugeSeries head = head_of(*column, kind);
    head.sensor = block[kPedts].text;
    if (kind == "forecast") head.issued = issued;
    add_column(shelf_.place_for(head), index, *column);
  }

  void add_column(std::size_t at, std::size_t index, const Column& column) {
    shelf_.at(at).readings.reserve(points_.size());
    for (const Point& point : points_) {
      Reading reading{.time = point.time, .si = {}, .marks = {}};
      if (point.columns[index] > kMissing) reading.si = column.unit.offset + column.unit.factor * point.columns[index];
      shelf_.add(at, reading);
    }
  }

  void take_whole(const JsonRow& whole) {
    if (whole[kGauge].is(Kind::Text)) gauge_ = whole[kGauge].text;
    if (whole[kStatusTime].is(Kind::Text)) take_status(whole);
    if (!whole[kData].is(Kind::List) || is_block_) return;
    // One block alone: the fourth sign of its SHEF code is F for a forecast, R for what was read.
    const std::string& pedts = whole[kPedts].text;
    const char type = pedts.size() > 3 ? pedts[3] : ' ';
    if (type == 'F' || type == 'R') return take_block(whole, type == 'F' ? "forecast" : "observed");
    is_block_ = true;
    shelf_.leave_out("rows", "the code \"" + printable(pedts) + "\" does not tell whether they were observed or forecast",
                     "/pedts", points_.size());
  }

  void take_status(const JsonRow& whole) {
    is_block_ = true;
    take_point(whole, {kStatusTime, kStatusPrimary, kStatusSecondary});
    const std::array units{kStatusPrimaryUnit, kStatusSecondaryUnit};
    for (std::size_t i = 0; i < units.size(); ++i) {
      const auto column = column_in(whole[units[i]].text);
      if (!column || points_.empty()) continue;
      GaugeSeries head = head_of(*column, "observed");
      head.station_name = whole[kGaugeName].text;
      add_column(shelf_.place_for(head), i, *column);
    }
    points_.clear();
  }

  [[nodiscard]] GaugeSeries head_of(const Column& column, const std::string& kind) const {
    return series_head("nwps:" + gauge_, kind + (column.variable == Variable::Flow ? ":flow" : ":stage"),
                       column.variable, where_);
  }

  const std::string& where_;
  std::string gauge_;
  SeriesShelf shelf_;
  std::vector<Point> points_;
  bool is_block_ = false;
};

}  // namespace

bool is_nwps(std::string_view bytes) {
  return (stands_near_an_end(bytes, "\"primaryName\"") && stands_near_an_end(bytes, "\"secondaryName\"")) ||
         (stands_near_an_end(bytes, "\"lid\"") && stands_near_an_end(bytes, "\"floodCategory\""));
}

Result<GaugeAnswer> read_nwps(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
