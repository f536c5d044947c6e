#include "adapters/in/gauges/ea_hydrology/read_answer.hpp"

#include <fmt/format.h>

#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/ea_hydrology/measure.hpp"
#include "adapters/in/gauges/ea_streams.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kMeasure, kDate, kTime, kValue, kQuality, kCompleteness, kNotation, kLabel, kItems };
enum Row : int { kItem, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/items", kItems},
                                 {"/items/*/measure", kMeasure},
                                 {"/items/*/measure/@id", kMeasure},
                                 {"/items/*/date", kDate},
                                 {"/items/*/dateTime", kTime},
                                 {"/items/*/value", kValue},
                                 {"/items/*/quality", kQuality},
                                 {"/items/*/completeness", kCompleteness},
                                 {"/items/*/notation", kNotation},
                                 {"/items/*/label", kLabel}},
                                {{"/items/*", kItem}, {"", kWhole}}};
  return kShape;
}

// Good is checked; Suspect, and words not met so far, are kept as a doubt.
void add_quality(const std::string& quality, Marks& marks, std::set<std::string>& unknown) {
  if (quality == "Good") return marks.insert(Mark::Approved);
  if (quality == "Unchecked") return marks.insert(Mark::Provisional);
  if (quality == "Estimated") return marks.insert(Mark::Estimated);
  if (quality == "Missing") return marks.insert(Mark::Unavailable);
  if (quality.empty()) return;
  marks.insert(Mark::Unknown);
  unknown.insert(quality);
}

std::optional<Instant> gmt_in(std::string_view text) {
  const auto written = written_time_in(text);
  if (!written) return std::nullopt;
  return written->local - written->east.value_or(Period{0});
}

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kWhole)
      items_ = row[kItems];
    else if (row[kMeasure].text.empty() && row[kNotation].is(Kind::Text))
      tell_measure(row);
    else
      take_item(row);
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (const auto wrong = why_no_list(items_, "/items", bytes, where_)) return tl::unexpected(*wrong);
    return std::move(shelf_).answer();
  }

 private:
  void take_item(const JsonRow& item) {
    if (item[kMeasure].text.empty() || !item[kTime].is(Kind::Text))
      return shelf_.leave_out("items", "no measure with a dateTime, so no readings", item.place());
    const EaStreams::Stream* const stream = streams_.stream_of(item[kMeasure].text, item, shelf_);
    if (stream == nullptr) return;
    const std::string& written = item[kTime].text;
    const auto time = stream->measure->daily ? water_day_in(item) : gmt_in(written);
    auto reading = ea_reading(*stream, {time, written}, item[kValue], item, shelf_);
    if (!reading) return;
    add_quality(item[kQuality].text, reading->marks, shelf_.at(stream->on_shelf).unknown_codes);
    if (item[kCompleteness].text == "Incomplete") reading->marks.insert(Mark::Estimated);
    shelf_.add(stream->on_shelf, *reading);
  }

  void tell_measure(const JsonRow& item) {
    const auto measure = ea_hydrology_measure(item[kNotation].text);
    const std::string_view of_station =
        std::string_view{item[kNotation].text}.substr(measure ? measure->station.size() + 1 : 0);
    shelf_.remark(fmt::format("measure {} can be asked for ({}); a list of measures holds no readings",
                              printable(of_station), printable(item[kLabel].text)));
  }

  std::optional<Instant> water_day_in(const JsonRow& item) {
    shelf_.remark("daily values of this service are of the water day, from 09:00 GMT of the date to 09:00 of the next");
    if (item[kDate].is(Kind::Text)) return date_label_in(item[kDate].text);
    const std::string& written = item[kTime].text;
    return gmt_in(written) ? date_label_in(written.substr(0, written.find('T'))) : std::nullopt;
  }

  const std::string& where_;
  SeriesShelf shelf_;
  EaStreams streams_{ea_hydrology_measure, where_};
  JsonValue items_;
};

}  // namespace

bool is_ea_hydrology(std::string_view bytes) { return stands_near_an_end(bytes, "environment.data.gov.uk/hydrology/"); }

Result<GaugeAnswer> read_ea_hydrology(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
