#include "adapters/in/gauges/hubeau/read_answer.hpp"

#include <fmt/format.h>

#include <cmath>
#include <initializer_list>
#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"

namespace floatwright {
namespace {

using Kind = JsonValue::Kind;

enum Slot : int { kStation, kQuantity, kTime, kValue, kStatus, kQualification, kMethod, kData, kNext };
enum Row : int { kRow, kWhole };

const JsonShape& answer_shape() {
  static const JsonShape kShape{{{"/data", kData},
                                 {"/next", kNext},
                                 {"/data/*/code_station", kStation},
                                 {"/data/*/grandeur_hydro", kQuantity},
                                 {"/data/*/date_obs", kTime},
                                 {"/data/*/resultat_obs", kValue},
                                 {"/data/*/code_statut", kStatus},
                                 {"/data/*/code_qualification_obs", kQualification},
                                 {"/data/*/code_methode_obs", kMethod}},
                                {{"/data/*", kRow}, {"", kWhole}}};
  return kShape;
}

constexpr double kMetresPerMillimetre = 0.001;
constexpr double kCubicMetresPerLitre = 0.001;

class AnswerReader {
 public:
  explicit AnswerReader(const std::string& where) : where_(where) {}

  void take(const JsonRow& row) {
    if (row.row == kRow) return take_row(row);
    data_ = row[kData];
    if (row[kNext].is(Kind::Text) && !row[kNext].text.empty()) next_ = row[kNext].text;
  }

  Result<GaugeAnswer> answer(std::string_view bytes) && {
    if (const auto wrong = why_no_list(data_, "/data", bytes, where_)) return tl::unexpected(*wrong);
    GaugeAnswer out = std::move(shelf_).answer();
    for (const GaugeSeries& series : out.series)
      if (series.variable == Variable::Flow) tell_unit_slip(series, out);
    out.next = next_;
    return out;
  }

 private:
  void take_row(const JsonRow& row) {
    if (row[kStation].is(Kind::Null)) return shelf_.not_used("row of a whole site, which its station repeats");
    if (!row[kStation].is(Kind::Text) || !row[kTime].is(Kind::Text) || row[kValue].is(Kind::Absent))
      return shelf_.leave_out("rows", "no code_station, date_obs and resultat_obs, so no readings", row.place());
    const std::string& quantity = row[kQuantity].text;
    if (quantity != "H" && quantity != "Q") return shelf_.not_used("quantity " + printable(quantity));
    const std::string name = "series " + quantity + " of station " + printable(row[kStation].text);
    const auto time = instant_in(row[kTime].text);
    const RowValue value = row_value(row[kValue], {});
    if (!time || value.broken)
      return shelf_.leave_out(
          name, time ? *value.broken : "the time can't be read, first \"" + printable(row[kTime].text) + "\"", row.place());
    const std::size_t at = place_for(row);
    Reading reading{.time = *time, .si = {}, .marks = {}};
    if (value.number) reading.si = *value.number * (quantity == "H" ? kMetresPerMillimetre : kCubicMetresPerLitre);
    add_codes(row, reading.marks, shelf_.at(at).unknown_codes);
    shelf_.add(at, reading);
  }

  // Status 0 none, 4 raw, 8 corrected, 12 checked once, 16 checked; qualification 12 doubtful, 16 not judged, 20 good;
  // method 0 measured, 8 computed (a discharge from its stage), 12 interpolated.
  static void add_codes(const JsonRow& row, Marks& marks, std::set<std::string>& unknown) {
    const auto add = [&](std::string_view what, Slot slot, std::initializer_list<int> without_mark,
                         std::initializer_list<std::pair<int, Mark>> with_mark) {
      if (!row[slot].is(Kind::Number)) return;
      for (const int code : without_mark)
        if (row[slot].number == code) return;
      for (const auto& [code, mark] : with_mark)
        if (row[slot].number == code) return marks.insert(mark);
      marks.insert(Mark::Unknown);
      unknown.insert(fmt::format("{} {}", what, row[slot].number));
    };
    add("status", kStatus, {0},
        {{4, Mark::Provisional}, {8, Mark::Provisional}, {12, Mark::Provisional}, {16, Mark::Approved}});
    add("method", kMethod, {0, 8}, {{12, Mark::Estimated}});
    add("qualification", kQualification, {0, 16, 20}, {});
  }

  // The rows of one station and quantity stand together.
  std::size_t place_for(const JsonRow& row) {
    if (row[kStation].text == last_station_ && row[kQuantity].text == last_quantity_) return last_;
    last_station_ = row[kStation].text;
    last_quantity_ = row[kQuantity].text;
    last_ = shelf_.place_for(series_head("hubeau:" + last_station_, last_quantity_,
                                         last_quantity_ == "H" ? Variable::GaugeHeight : Variable::Flow, where_));
    return last_;
  }

  // The service has published days in m3/s where it says l/s: a flow that jumps by about a thousand is told.
  static void tell_unit_slip(const GaugeSeries& series, GaugeAnswer& told) {
    const Reading* before = nullptr;
    for (const Reading& row : series.readings) {
      if (!row.si || *row.si == 0.0) continue;
      const double ratio = before == nullptr ? 1.0 : std::abs(*row.si / *before->si);
      before = &row;
      const double jump = ratio < 1.0 ? 1.0 / ratio : ratio;
      if (jump < 500.0 || jump > 2000.0) continue;
      const std::string sentence = fmt::format(
          "series {} of {}: the flow jumps by a factor of {:.0f} from one row to the next; the service may have sent "
          "m3/s for l/s",
          series.series_id, printable(series.station), jump);
      told.notes.push_back(sentence);
      told.doubts.push_back(sentence);
      return;
    }
  }

  const std::string& where_;
  SeriesShelf shelf_;
  std::string last_station_, last_quantity_;
  std::size_t last_ = 0;
  JsonValue data_;
  std::optional<std::string> next_;
};

}  // namespace

bool is_hubeau(std::string_view bytes) {
  return stands_near_an_end(bytes, "\"grandeur_hydro\"") || stands_near_an_end(bytes, "hubeau.eaufrance.fr/api");
}

Result<GaugeAnswer> read_hubeau(std::string_view bytes, const std::string& where) {
  AnswerReader reader(where);
  const auto read = read_json_rows(bytes, where, answer_shape(), [&](const JsonRow& row) { reader.take(row); });
  if (!read) return tl::unexpected(read.error());
  return std::move(reader).answer(bytes);
}

}  // namespace floatwright
