#include "adapters/in/gauges/wsc_geomet/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/wsc_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int {
  kStation,
  kName,
  kInstant,
  kDate,
  kLevel,
  kDischarge,
  kLevelSymbol,
  kDischargeSymbol,
  kFeatures,
  kReturned,
  kRel,
  kHref
};
enum Row : int { kFeature, kLink, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/features", kFeatures},
                                 {"/features/*/properties/STATION_NUMBER", kStation},
                                 {"/features/*/properties/STATION_NAME", kName},
                                 {"/features/*/properties/DATETIME", kInstant},
                                 {"/features/*/properties/DATE", kDate},
                                 {"/features/*/properties/LEVEL", kLevel},
                                 {"/features/*/properties/DISCHARGE", kDischarge},
                                 {"/features/*/properties/LEVEL_SYMBOL_EN", kLevelSymbol},
                                 {"/features/*/properties/DISCHARGE_SYMBOL_EN", kDischargeSymbol},
                                 {"/numberReturned", kReturned},
                                 {"/links/*/rel", kRel},
                                 {"/links/*/href", kHref}},
                                {{"/features/*", kFeature}, {"/links/*", kLink}, {"", kWhole}}};
  return kShape;
}

struct Quantity {
  Slot value, symbol;
  const char* property;
  Variable variable;
};
constexpr std::array kQuantities{Quantity{kLevel, kLevelSymbol, "LEVEL", Variable::GaugeHeight},
                                 Quantity{kDischarge, kDischargeSymbol, "DISCHARGE", Variable::Flow}};

// The shortest number that single precision can't tell from this one, where this one is a single.
double as_written(double number) {
  const auto single = static_cast<float>(number);
  if (static_cast<double>(single) != number) return number;
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), single).ptr;
  double out = number;
  std::from_chars(text.data(), end, out);
  return out;
}

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kFeature) take_feature(row);
    if (row.row == kLink && row[kRel].text == "next" && row[kHref].is(Kind::Text)) next_ = row[kHref].text;
    if (row.row == kWhole) take_whole(row);
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (const auto wrong = why_no_list(features_list_, "/features", bytes, where_)) return tl::unexpected(*wrong);
    if (features_ > 0 && lacking_ == features_)
      return tl::unexpected(Failure{where_ + ": the features are no readings; the collections read are "
                                             "hydrometric-realtime and hydrometric-daily-mean",
                                    kExitBadData});
    GaugeAnswer out = std::move(shelf_).answer();
    out.next = next_;
    return out;
  }

 private:
  void take_whole(const JsonRow& whole) {
    features_list_ = whole[kFeatures];
    const JsonValue& told = whole[kReturned];
    if (told.is(Kind::Number) && told.number != static_cast<double>(features_))
      shelf_.doubt(fmt::format("the answer says it holds {} rows and holds {}", told.number, features_));
  }

  void take_feature(const JsonRow& feature) {
    ++features_;
    const bool daily = !feature[kInstant].is(Kind::Text);
    const std::string& written = feature[daily ? kDate : kInstant].text;
    if (!feature[kStation].is(Kind::Text) || written.empty()) {
      ++lacking_;
      return shelf_.leave_out("features", "no STATION_NUMBER with a DATETIME or DATE, so no readings", feature.place());
    }
    const auto time = daily ? date_label_in(written) : instant_in(written);
    if (!time)
      return shelf_.leave_out("station " + shown(feature[kStation].text),
                              "the time can't be read, first \"" + shown(written) + "\"", feature.place());
    for (std::size_t i = 0; i < kQuantities.size(); ++i) take_quantity(feature, *time, daily, i);
  }

  void take_quantity(const JsonRow& feature, Instant time, bool daily, std::size_t index) {
    const Quantity& quantity = kQuantities[index];
    const JsonValue& symbol = feature[quantity.symbol];
    const RowValue value = row_value(feature[quantity.value], {});
    if (value.broken)
      return shelf_.leave_out(std::string{"property "} + quantity.property, *value.broken, feature.place());
    if (!value.number && symbol.text.empty()) return;  // the station has no such sensor, or it said nothing
    const std::size_t at = place_for(feature, daily, index);
    Reading reading{.time = time, .si = {}, .marks = {}};
    if (value.number) reading.si = as_written(*value.number);
    if (!symbol.text.empty()) add_wsc_marks(symbol.text, reading.marks, shelf_.at(at).unknown_codes);
    shelf_.add(at, reading);
  }

  // The features of one station stand together.
  std::size_t place_for(const JsonRow& feature, bool daily, std::size_t index) {
    Last& last = last_[index];
    if (last.daily == daily && last.station == feature[kStation].text) return last.at;
    const Quantity& quantity = kQuantities[index];
    GaugeSeries head =
        wsc_series(feature[kStation].text, fmt::format("{}:{}", daily ? "daily-mean" : "realtime", quantity.property),
                   quantity.variable, where_);
    head.station_name = feature[kName].text;
    head.daily = daily;
    last = {.station = feature[kStation].text, .daily = daily, .at = shelf_.place_for(head)};
    return last.at;
  }

  struct Last {
    std::string station;  // empty: none yet
    bool daily = false;
    std::size_t at = 0;
  };

  const std::string& where_;
  SeriesShelf shelf_;
  std::array<Last, kQuantities.size()> last_;
  std::size_t features_ = 0, lacking_ = 0;
  JsonValue features_list_;
  std::optional<std::string> next_;
};

}  // namespace

bool is_wsc_geomet(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"FeatureCollection\"") &&
         (stands_near_an_end(bytes, "\"STATION_NUMBER\"") || stands_near_an_end(bytes, "/collections/hydrometric-"));
}

Result<GaugeAnswer> read_wsc_geomet(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
