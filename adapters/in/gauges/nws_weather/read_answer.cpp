#include "adapters/in/gauges/nws_weather/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <optional>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/nws_weather/interval.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/service_error.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

struct Layer {
  const char* property;
  const char* series_id;
  Variable variable;
};
constexpr std::array kLayers{Layer{"temperature", "temperature", Variable::AirTemperature},
                             Layer{"quantitativePrecipitation", "precipitation", Variable::Rain},
                             Layer{"windSpeed", "wind", Variable::Wind}};

// The rows of a layer have its number; its slots are its unit and its list.
enum Slot : int {
  kTime,
  kValue,
  kUpdated,
  kGrid,
  kX,
  kY,
  kGridAddress,
  kUnits,
  kLists = kUnits + static_cast<int>(kLayers.size())
};
constexpr int kWhole = kLayers.size();

const JsonShape& answer_shape() {
  static const JsonShape kShape = [] {
    std::vector<JsonPath> values{{"/properties/updateTime", kUpdated},
                                 {"/properties/gridId", kGrid},
                                 {"/properties/gridX", kX},
                                 {"/properties/gridY", kY},
                                 {"/properties/forecastGridData", kGridAddress}};
    std::vector<JsonPath> rows{{"", kWhole}};
    int number = 0;
    for (const Layer& layer : kLayers) {
      const std::string at = std::string{"/properties/"} + layer.property;
      values.push_back({at + "/uom", kUnits + number});
      values.push_back({at + "/values", kLists + number});
      values.push_back({at + "/values/*/validTime", kTime});
      values.push_back({at + "/values/*/value", kValue});
      rows.push_back({at + "/values/*", number++});
    }
    return JsonShape{values, rows};
  }();
  return kShape;
}

// "wmoUnit:km_h-1": the unit behind the name space. SI (of rain: mm an hour) is offset + factor * value.
std::optional<UnitLine> unit_of(Variable variable, std::string_view uom) {
  const std::string_view unit = uom.substr(uom.find(':') == std::string_view::npos ? 0 : uom.find(':') + 1);
  if (variable == Variable::AirTemperature) return unit_line(Variable::WaterTemperature, unit);
  if (variable == Variable::Rain && unit == "mm") return UnitLine{};
  if (variable == Variable::Wind && unit == "km_h-1") return UnitLine{1.0 / 3.6};
  if (variable == Variable::Wind && unit == "m_s-1") return UnitLine{};
  return std::nullopt;
}

std::string as_text(const JsonValue& value) {
  return value.is(Kind::Number) ? fmt::format("{}", value.number) : value.text;
}

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kWhole)
      take_whole(row);
    else
      take_row(row);
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (!is_grid_ && !next_) {
      const auto error = service_error(bytes);
      return tl::unexpected(
          Failure{where_ + ": " +
                      (error ? "the service answered with an error, " + *error
                             : "neither a grid's forecast (/properties/temperature, quantitativePrecipitation, "
                               "windSpeed) nor a point (/properties/forecastGridData)"),
                  kExitBadData});
    }
    GaugeAnswer out = std::move(shelf_).answer();
    out.next = next_;
    return out;
  }

 private:
  struct Value {
    Interval over;
    double number = 0.0;
  };

  void take_row(const JsonRow& row) {
    const std::string name = std::string{"layer "} + kLayers[static_cast<std::size_t>(row.row)].property;
    const auto over = interval_in(row[kTime].text);
    const RowValue value = row_value(row[kValue], {});
    if (!over || value.broken)
      return shelf_.leave_out(
          name, over ? *value.broken : "the interval can't be read, first \"" + printable(row[kTime].text) + "\"",
          row.place());
    if (value.number) values_[static_cast<std::size_t>(row.row)].push_back({*over, *value.number});
  }

  void take_whole(const JsonRow& whole) {
    if (whole[kGridAddress].is(Kind::Text)) next_ = whole[kGridAddress].text;
    const auto issued = instant_in(whole[kUpdated].text);
    for (std::size_t i = 0; i < kLayers.size(); ++i) {
      is_grid_ = is_grid_ || whole[kLists + static_cast<int>(i)].is(Kind::List);
      if (!values_[i].empty()) take_layer(i, whole, issued);
    }
  }

  void take_layer(std::size_t index, const JsonRow& whole, const std::optional<Instant>& issued) {
    const Layer& layer = kLayers[index];
    const std::string name = std::string{"layer "} + layer.property;
    const std::string& uom = whole[kUnits + static_cast<int>(index)].text;
    const auto unit = unit_of(layer.variable, uom);
    if (!unit || !issued)
      return shelf_.leave_out(name,
                              unit ? "the time of issue can't be read (\"" + printable(whole[kUpdated].text) + "\")"
                                   : "the unit \"" + printable(uom) + "\" is not known",
                              "", values_[index].size());
    GaugeSeries head =
        series_head(fmt::format("nws:{}.{}.{}", whole[kGrid].text, as_text(whole[kX]), as_text(whole[kY])),
                    layer.series_id, layer.variable, where_);
    head.issued = issued;
    const std::size_t at = shelf_.place_for(head);
    shelf_.at(at).readings.reserve(values_[index].size());
    for (const Value& value : values_[index]) add_hours(at, value, *unit);
  }

  void add_hours(std::size_t at, const Value& value, const UnitLine& unit) {
    constexpr Period kHour = std::chrono::hours{1};
    double si = unit.offset + unit.factor * value.number;
    if (shelf_.at(at).variable == Variable::Rain)
      si /= std::chrono::duration<double, std::chrono::hours::period>{value.over.to - value.over.from}.count();
    for (Instant time = value.over.from; time < value.over.to; time += kHour)
      shelf_.add(at, {.time = time, .si = si, .marks = {}});
  }

  const std::string& where_;
  SeriesShelf shelf_;
  std::array<std::vector<Value>, kLayers.size()> values_;
  std::optional<std::string> next_;
  bool is_grid_ = false;
};

}  // namespace

bool is_nws_weather(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"wx:Gridpoint\"") || stands_near_an_end(bytes, "\"wx:Point\"") ||
         stands_near_an_end(bytes, "api.weather.gov/gridpoints/") ||
         stands_near_an_end(bytes, "api.weather.gov/points/");
}

Result<GaugeAnswer> read_nws_weather(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
