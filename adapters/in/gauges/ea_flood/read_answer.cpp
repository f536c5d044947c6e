#include "adapters/in/gauges/ea_flood/read_answer.hpp"

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/ea_flood/measure.hpp"
#include "adapters/in/gauges/ea_streams.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/series_shelf.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kMeasure, kTime, kValue, kItems };
enum Row : int { kItem, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/items", kItems},
                                 {"/items/*/measure", kMeasure},
                                 {"/items/*/measure/@id", kMeasure},
                                 {"/items/*/dateTime", kTime},
                                 {"/items/*/value", kValue}},
                                {{"/items/*", kItem}, {"", kWhole}}};
  return kShape;
}

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kWhole)
      items_ = row[kItems];
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
    const auto time = instant_in(written);
    auto reading = ea_reading(*stream, {time, written}, item[kValue], item, shelf_);
    if (!reading) return;
    reading->marks.insert(Mark::Provisional);
    shelf_.add(stream->on_shelf, *reading);
  }

  const std::string& where_;
  SeriesShelf shelf_;
  EaStreams streams_{ea_flood_measure, where_};
  JsonValue items_;
};

}  // namespace

bool is_ea_flood(std::string_view bytes) {
  return stands_near_an_end(bytes, "environment.data.gov.uk/flood-monitoring");
}

Result<GaugeAnswer> read_ea_flood(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
