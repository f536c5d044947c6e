#include "adapters/in/gauges/ea_streams.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "adapters/in/gauges/json_answer.hpp"
#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

struct Spelling {
  std::string_view text, usual;
};
constexpr std::array kSpellings{Spelling{"mASD", "m"},   Spelling{"mAOD", "m"},  Spelling{"m3_s", "m3/s"},
                                Spelling{"m3s", "m3/s"}, Spelling{"l_s", "l/s"}, Spelling{"deg_C", "degC"},
                                Spelling{"oC", "degC"}};

}  // namespace

std::optional<UnitLine> ea_unit(Variable variable, std::string_view spelling) {
  const auto* const found =
      std::find_if(kSpellings.begin(), kSpellings.end(), [&](const Spelling& s) { return s.text == spelling; });
  return unit_line(variable, found == kSpellings.end() ? spelling : found->usual);
}

std::optional<Reading> ea_reading(const EaStreams::Stream& stream, const EaTime& time, const JsonValue& value,
                                  const JsonRow& item, SeriesShelf& shelf) {
  const RowValue read = value.is(JsonValue::Kind::Absent) ? RowValue{} : row_value(value, {});
  if (!time.read || read.broken) {
    shelf.leave_out("measure " + printable(stream.name),
                    time.read ? *read.broken : "the time can't be read, first \"" + printable(time.written) + "\"",
                    item.place());
    return std::nullopt;
  }
  Reading out{.time = *time.read, .si = {}, .marks = {}};
  if (read.number) out.si = stream.unit->offset + stream.unit->factor * *read.number;
  return out;
}

const EaStreams::Stream* EaStreams::stream_of(const std::string& address, const JsonRow& item, SeriesShelf& shelf) {
  const Stream& stream = at(address, shelf);
  if (stream.unit) return &stream;
  const std::string name = "measure " + printable(stream.name);
  if (!stream.measure)
    shelf.leave_out(name, "its name does not tell quantity and unit", item.place());
  else if (!stream.measure->variable)
    shelf.not_used(printable(stream.measure->what) + " of station " + printable(stream.measure->station));
  else
    shelf.leave_out(name, fmt::format("the unit \"{}\" is not known", printable(stream.measure->unit)), item.place());
  return nullptr;
}

EaStreams::Stream& EaStreams::at(const std::string& address, SeriesShelf& shelf) {
  if (last_ != nullptr && address == last_address_) return *last_;
  const auto [found, is_new] = streams_.try_emplace(address);
  last_address_ = address;
  last_ = &found->second;
  if (!is_new) return *last_;
  last_->name = address.substr(address.rfind('/') + 1);
  last_->measure = measure_of_(last_->name);
  if (!last_->measure || !last_->measure->variable) return *last_;
  const EaMeasure& measure = *last_->measure;
  last_->unit = ea_unit(*measure.variable, measure.unit);
  if (!last_->unit) return *last_;
  GaugeSeries head = series_head("ea:" + measure.station, last_->name, *measure.variable, where_);
  head.sensor = measure.sensor;
  head.daily = measure.daily;
  last_->on_shelf = shelf.place_for(head);
  return *last_;
}

}  // namespace floatwright
