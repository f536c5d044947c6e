#pragma once
// The series of an answer of the Environment Agency by the measures that its items name: what a measure's name tells is
// worked out once, since the items of one measure stand together.
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {

struct EaMeasure {
  std::string station, what, sensor, unit;  // what: quantity and its kind, as the service has it
  bool daily = false;
  std::optional<Variable> variable;  // none: not used here
};

class EaStreams {
 public:
  using MeasureOf = std::optional<EaMeasure> (*)(std::string_view name);  // none: the name is built otherwise

  EaStreams(MeasureOf measure_of, const std::string& where) : measure_of_(measure_of), where_(where) {}

  struct Stream {
    std::string name;
    std::optional<EaMeasure> measure;
    std::optional<UnitLine> unit;
    std::size_t on_shelf = 0;
  };
  // Of the item that names the measure at `address`; null: it is left out, and the shelf has been told why.
  [[nodiscard]] const Stream* stream_of(const std::string& address, const JsonRow& item, SeriesShelf& shelf);

 private:
  [[nodiscard]] Stream& at(const std::string& address, SeriesShelf& shelf);

  MeasureOf measure_of_;
  const std::string& where_;
  std::unordered_map<std::string, Stream> streams_;
  std::string last_address_;
  Stream* last_ = nullptr;
};

// A unit as it stands in a measure's name: "m", "mASD" (above the stage datum), "mAOD" (above ordnance datum), "m3_s",
// "m3s", "deg_C". None: not known, such as the "---" of measures long dead.
[[nodiscard]] std::optional<UnitLine> ea_unit(Variable variable, std::string_view spelling);

// What an item says of its time: as it was read, if it could be, and as it was written.
struct EaTime {
  std::optional<Instant> read;
  const std::string& written;
};

// In SI, without marks. None: left out, and the shelf has been told why. Where there is no number the service leaves the
// whole value out.
[[nodiscard]] std::optional<Reading> ea_reading(const EaStreams::Stream& stream, const EaTime& time,
                                                const JsonValue& value, const JsonRow& item, SeriesShelf& shelf);

}  // namespace floatwright
