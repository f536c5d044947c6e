#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <unordered_map>
#include <vector>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/feature_page.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

constexpr std::array kLegacyNoData{-999999.0};  // never sent by this service so far; never a reading either

enum Slot : int {
  kSeries = kFirstOwnSlot,
  kLocation,
  kParameter,
  kTime,
  kStatistic,
  kValue,
  kUnit,
  kApproval,
  kQualifier,
  kChanged
};

const JsonShape& readings_shape() {
  static const JsonShape kShape = feature_shape({{"/properties/time_series_id", kSeries},
                                                 {"/properties/monitoring_location_id", kLocation},
                                                 {"/properties/parameter_code", kParameter},
                                                 {"/properties/time", kTime},
                                                 {"/properties/statistic_id", kStatistic},
                                                 {"/properties/value", kValue},
                                                 {"/properties/unit_of_measure", kUnit},
                                                 {"/properties/approval_status", kApproval},
                                                 {"/properties/qualifier", kQualifier},
                                                 {"/properties/qualifier/*", kQualifier},
                                                 {"/properties/last_modified", kChanged}});
  return kShape;
}

// The property for whose sake the feature is no reading; empty: it is one.
std::string lacking_in(const JsonRow& feature) {
  if (!feature[kSeries].is(Kind::Text)) return "time_series_id";
  if (!feature[kLocation].is(Kind::Text)) return "monitoring_location_id";
  if (!feature[kParameter].is(Kind::Text)) return "parameter_code";
  if (!feature[kTime].is(Kind::Text)) return "time";
  if (feature[kStatistic].is(Kind::Absent)) return "statistic_id";
  if (feature[kValue].is(Kind::Absent)) return "value";
  return {};
}

bool is_daily(const JsonRow& feature) {
  return feature[kTime].text.find('T') == std::string::npos ||
         (feature[kStatistic].is(Kind::Text) && !is_instantaneous(feature[kStatistic].text));
}

// What was made of codes the last time, since a series says the same of row after row.
struct LastCodes {
  std::string text;
  Marks marks;
};

// What the rows of one series share, worked out once.
struct Stream {
  std::optional<Variable> variable;
  std::optional<UnitLine> unit;
  bool daily = false;
  std::optional<std::size_t> on_shelf;
  LastCodes approval, qualifier;
};

class ReadingsReader {
 public:
  explicit ReadingsReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& feature) {
    const std::string lacking = lacking_in(feature);
    if (!lacking.empty()) {
      if (lacking_++ == 0) first_lack_ = feature.place() + "/properties/" + lacking;
      return shelf_.leave_out("features", "no " + lacking + " as text, so no readings", feature.place());
    }
    Stream& stream = stream_of(feature);
    if (!stream.variable) return shelf_.not_used("parameter " + printable(feature[kParameter].text));
    if (!stream.unit)
      return leave_out(feature, "unit_of_measure",
                       fmt::format("the unit \"{}\" of parameter {} is not known", printable(feature[kUnit].text),
                                   feature[kParameter].text));
    take_reading(feature, stream);
  }

  Result<GaugeAnswer> answer(const FeaturePage& page) && {
    if (page.features > 0 && lacking_ == page.features)
      return tl::unexpected(Failure{where_ + ": the features are no readings: nothing readable at " + first_lack_ +
                                        "; the collections read are continuous, latest-continuous, daily, latest-daily",
                                    kExitBadData});
    if (const auto doubt = doubt_of(page)) shelf_.doubt(*doubt);
    GaugeAnswer out = std::move(shelf_).answer();
    out.next = page.next;
    return out;
  }

 private:
  void take_reading(const JsonRow& feature, Stream& stream) {
    const std::string& written = feature[kTime].text;
    const auto time = stream.daily ? date_label_in(written) : instant_in(written);
    if (!time) return leave_out(feature, "time", "the time can't be read, first \"" + printable(written) + "\"");
    const RowValue value = row_value(feature[kValue], kLegacyNoData);
    if (value.broken) return leave_out(feature, "value", *value.broken);

    if (!stream.on_shelf) stream.on_shelf = shelf_.place_for(head_of(feature, stream));
    GaugeSeries& series = shelf_.at(*stream.on_shelf);
    Reading reading{.time = *time, .si = {}, .marks = value.marks};
    if (value.number) reading.si = stream.unit->offset + stream.unit->factor * *value.number;
    reading.marks.insert(marks_of(feature[kApproval], stream.approval, series));
    reading.marks.insert(marks_of(feature[kQualifier], stream.qualifier, series));
    shelf_.add(*stream.on_shelf, reading, instant_in(feature[kChanged].text));
  }

  void leave_out(const JsonRow& feature, const std::string& property, const std::string& why) {
    shelf_.leave_out("series " + printable(feature[kSeries].text), why, feature.place() + "/properties/" + property);
  }

  // The features of one series often stand together.
  Stream& stream_of(const JsonRow& feature) {
    const bool daily = is_daily(feature);
    key_.assign(daily ? "daily" : "");
    for (const int slot : {kSeries, kLocation, kParameter, kUnit, kStatistic})
      key_.append(1, '\n').append(feature[slot].text);
    if (last_ != nullptr && key_ == last_key_) return *last_;
    const auto [found, is_new] = streams_.try_emplace(key_);
    if (is_new) found->second = new_stream(feature, daily);
    last_key_ = key_;
    last_ = &found->second;
    return *last_;
  }

  Stream new_stream(const JsonRow& feature, bool daily) {
    const std::string& parameter = feature[kParameter].text;
    Stream out{.variable = variable_of(parameter),
               .unit = {},
               .daily = daily,
               .on_shelf = {},
               .approval = {},
               .qualifier = {}};
    if (out.variable) out.unit = unit_line(*out.variable, feature[kUnit].text);
    if (const std::string remark = remark_on(parameter); out.unit && !remark.empty()) shelf_.remark(remark);
    return out;
  }

  [[nodiscard]] GaugeSeries head_of(const JsonRow& feature, const Stream& stream) const {
    return {.station = station_of_location(feature[kLocation].text),
            .series_id = feature[kSeries].text,
            .sensor = {},
            .station_name = {},
            .source = where_,
            .variable = *stream.variable,
            .daily = stream.daily,
            .issued = {},
            .readings = {},
            .unknown_codes = {}};
  }

  static Marks marks_of(const JsonValue& codes, LastCodes& last, GaugeSeries& series) {
    if (codes.text != last.text) {
      last = {.text = codes.text, .marks = {}};
      add_marks(codes.text, last.marks, series.unknown_codes);
    }
    return last.marks;
  }

  const std::string& where_;
  SeriesShelf shelf_;
  std::unordered_map<std::string, Stream> streams_;
  std::string key_, last_key_;
  Stream* last_ = nullptr;
  std::size_t lacking_ = 0;
  std::string first_lack_;
};

}  // namespace

bool is_usgs_water_data(std::string_view bytes) { return stands_near_an_end(bytes, "\"FeatureCollection\""); }

Result<GaugeAnswer> read_usgs_water_data(std::string_view bytes, const std::string& where) {
  ReadingsReader readings(where);
  const auto page =
      read_feature_page(bytes, where, readings_shape(), [&](const JsonRow& feature) { readings.take(feature); });
  if (!page) return tl::unexpected(page.error());
  return std::move(readings).answer(*page);
}

}  // namespace floatwright
