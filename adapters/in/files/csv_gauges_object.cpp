#include "adapters/in/files/csv_gauges_object.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "adapters/in/calendar/clock_text.hpp"
#include "adapters/in/files/station_name.hpp"
#include "adapters/in/files/time_zone.hpp"
#include "adapters/in/files/unit_spelling.hpp"
#include "engine/readings/names.hpp"

namespace floatwright {
namespace {

constexpr int kMostColumns = 500, kMostLinesSkipped = 1000;  // judgement: no logger has more

CsvColumn read_column(TypedObject& in, std::string_view key) {
  const LocatedJson* const typed = in.find(key);
  if (typed != nullptr && typed->kind == JsonKind::Number)
    return {.name = {}, .place = in.whole_number(key, 1, kMostColumns, Need::Required).value_or(1)};
  return {.name = in.text(key, Need::Required), .place = 0};
}

CsvQuantity read_quantity(TypedObject& in) {
  CsvQuantity out;
  out.column = read_column(in, "column");
  const auto quantity = meaning_of(in, "quantity", in.text("quantity", Need::Required), kVariableWords);
  out.quantity = quantity.value_or(Variable::Flow);
  out.unit = in.text("unit", Need::Required);
  if (quantity && !out.unit.empty() && !unit_line(*quantity, out.unit))
    in.tell("unit", "\"" + out.unit + "\"",
            "a unit of " + std::string{word_for(*quantity)} + ": " + either_of(unit_spellings(*quantity)),
            "Write one of them.");
  in.finish();
  return out;
}

void read_columns(TypedObject& in, CsvGauge& gauge) {
  for (TypedObject& column : in.objects("columns", Need::Required)) gauge.columns.push_back(read_quantity(column));
  if (in.has("columns") && gauge.columns.empty())
    in.tell("columns", "no column", "at least one", "Say which column holds which quantity.");
}

// A name stands in addresses and pages as other stations' numbers do.
std::string read_station(TypedObject& in, std::set<std::string>& taken) {
  const std::string station = in.text("station", Need::Required);
  if (station.empty()) return station;
  if (!station.starts_with("csv:"))
    in.tell("station", "\"" + station + "\"", "a name as \"csv:ford\"", "Put csv: before it.");
  else
    tell_bad_station(in, "station", station);
  if (!taken.insert(station).second)
    in.tell("station", "\"" + station + "\", which stands above already", "each station once", "Give it another name.");
  return station;
}

void read_time(TypedObject& in, CsvGauge& gauge) {
  gauge.time = read_column(in, "time_column");
  gauge.time_format = in.text("time_format", Need::Optional);
  if (!gauge.time_format.empty() && !gives_back_its_times(gauge.time_format))
    in.tell("time_format", "\"" + gauge.time_format + "\"",
            "a form as \"%d.%m.%Y %H:%M\" with year, month and day in it",
            "Look the letters up under strptime; leave the key out for times as 2026-05-13T19:30.");
  gauge.time_zone = in.text("time_zone", Need::Optional);
  if (!gauge.time_zone.empty()) tell_unknown_zone(in, "time_zone", gauge.time_zone);
}

void read_separator(TypedObject& in, CsvGauge& gauge) {
  static constexpr WordTable<char, 4> kSeparators{{{',', ","}, {';', ";"}, {'\t', "tab"}, {'|', "|"}}};
  gauge.separator = meaning_of(in, "separator", in.text("separator", Need::Optional), kSeparators).value_or(',');
  gauge.decimal_comma = in.truth("decimal_comma", false);
  if (gauge.decimal_comma && gauge.separator == ',')
    in.tell("decimal_comma", "it beside a comma between fields", "another separator",
            "Write \"separator\": \";\" or \"tab\".");
}

// Texts or numbers.
void read_missing(TypedObject& in, CsvGauge& gauge) {
  const LocatedJson* const typed = in.find("missing");
  if (typed == nullptr) return;
  const bool fits = typed->kind == JsonKind::List && std::ranges::all_of(typed->items, [](const LocatedJson& item) {
                      return item.kind == JsonKind::Text || item.kind == JsonKind::Number;
                    });
  if (!fits)
    return in.tell("missing", describe(*typed), "a list of texts or numbers as [-9999, \"n/a\"]",
                   "Write what the file has where there is no value.");
  for (const LocatedJson& item : typed->items)
    gauge.missing.push_back(item.kind == JsonKind::Text ? item.text : fmt::format("{}", item.number));
}

CsvGauge read_csv_gauge_entry(TypedObject& in, std::set<std::string>& taken) {
  CsvGauge gauge;
  gauge.station = read_station(in, taken);
  gauge.file = in.text("file", Need::Required);
  read_time(in, gauge);
  read_separator(in, gauge);
  gauge.skip_lines = in.whole_number("skip_lines", 0, kMostLinesSkipped, Need::Optional).value_or(0);
  read_missing(in, gauge);
  gauge.daily = in.truth("daily", false);
  read_columns(in, gauge);
  in.finish();
  return gauge;
}

}  // namespace

std::vector<CsvGauge> read_csv_gauges(TypedObject& settings) {
  std::vector<CsvGauge> out;
  std::set<std::string> taken;
  for (TypedObject& gauge : settings.objects("csv_gauges", Need::Optional))
    out.push_back(read_csv_gauge_entry(gauge, taken));
  return out;
}

}  // namespace floatwright
