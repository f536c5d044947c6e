#include "adapters/in/gauges/wsc_geomet/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/feature_page.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/wsc_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int {
  kStation = kFirstOwnSlot,
  kName,
  kInstant,
  kDate,
  kLevel,
  kDischarge,
  kLevelSymbol,
  kDischargeSymbol
};

const JsonShape& answer_shape() {
  static const JsonShape kShape = feature_shape({{"/properties/STATION_NUMBER", kStation},
                                                 {"/properties/STATION_NAME", kName},
                                                 {"/properties/DATETIME", kInstant},
                                                 {"/properties/DATE", kDate},
                                                 {"/properties/LEVEL", kLevel},
                                                 {"/properties/DISCHARGE", kDischarge},
                                                 {"/properties/LEVEL_SYMBOL_EN", kLevelSymbol},
                                                 {"/properties/DISCHARGE_SYMBOL_EN", kDischargeSymbol}});
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

  void take(const JsonRow& feature) {
    const bool daily = !feature[kInstant].is(Kind::Text);
    const std::string& written = feature[daily ? kDate : kInstant].text;
    if (!feature[kStation].is(Kind::Text) || written.empty()) {
      ++lacking_;
      return shelf_.leave_out("features", "no STATION_NUMBER with a DATETIME or DATE, so no readings", feature.place());
    }
    const auto time = daily ? date_label_in(written) : instant_in(written);
    if (!time)
      return shelf_.leave_out("station " + printable(feature[kStation].text),
                              "the time can't be read, first \"" + printable(written) + "\"", feature.place());
    for (std::size_t i = 0; i < kQuantities.size(); ++i) take_quantity(feature, *time, daily, i);
  }

  Result<GaugeAnswer> answer(const FeaturePage& page) && {
    if (page.features > 0 && lacking_ == page.features)
      return tl::unexpected(Failure{where_ + ": the features are no readings; the collections read are "
                                             "hydrometric-realtime and hydrometric-daily-mean",
                                    kExitBadData});
    if (const auto doubt = doubt_of(page)) shelf_.doubt(*doubt);
    GaugeAnswer out = std::move(shelf_).answer();
    out.next = page.next;
    return out;
  }

 private:
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
  std::size_t lacking_ = 0;
};

}  // namespace

bool is_wsc_geomet(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"FeatureCollection\"") &&
         (stands_near_an_end(bytes, "\"STATION_NUMBER\"") || stands_near_an_end(bytes, "/collections/hydrometric-"));
}

Result<GaugeAnswer> read_wsc_geomet(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto page =
      read_feature_page(bytes, where, answer_shape(), [&](const JsonRow& feature) { reader.take(feature); });
  if (!page) return tl::unexpected(page.error());
  return std::move(reader).answer(*page);
}

}  // namespace floatwright
