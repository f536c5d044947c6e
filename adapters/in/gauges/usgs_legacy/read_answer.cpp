#include "adapters/in/gauges/usgs_legacy/read_answer.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "adapters/in/gauges/json_fields.hpp"
#include "adapters/in/gauges/json_tree.hpp"
#include "adapters/in/gauges/plain_text.hpp"
#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"

namespace floatwright {
namespace {

using Json = nlohmann::json;

constexpr double kUsualNoData = -999999.0;

Failure failure(const std::string& where, const std::string& what) { return {where + ": " + what, kExitBadData}; }

// The first entry of a list under `key`, or null.
const Json& first_of(const Json& object, const char* key) {
  static const Json kNothing;
  const Json* const list = field(object, key);
  return list != nullptr && list->is_array() && !list->empty() ? list->front() : kNothing;
}

const Json& under(const Json& object, const char* key) {
  static const Json kNothing;
  const Json* const found = field(object, key);
  return found == nullptr ? kNothing : *found;
}

// What holds for all blocks of one entry.
struct Entry {
  std::string agency, site, site_name, parameter, statistic, unit;
  std::vector<double> no_data;
};

std::string statistic_of(const Json& variable) {
  const Json& options = under(under(variable, "options"), "option");
  if (options.is_array())
    for (const Json& option : options)
      if (text_field(option, "name") == "Statistic") return text_field(option, "optionCode").value_or("00000");
  return "00000";
}

std::vector<double> no_data_of(const Json& variable) {
  std::vector<double> out{kUsualNoData};
  const Json& code = under(variable, "noDataValue");
  if (code.is_number()) out.push_back(code.get<double>());
  if (code.is_string())
    if (const auto number = number_in(code.get<std::string>())) out.push_back(*number);
  return out;
}

Result<Entry> entry_of(const Json& series, const std::string& place, const std::string& where) {
  const Json& source = under(series, "sourceInfo");
  const Json& variable = under(series, "variable");
  const auto site = text_field(first_of(source, "siteCode"), "value");
  if (!site) return tl::unexpected(failure(where, "no station number at " + place + "/sourceInfo/siteCode/0/value"));
  const auto parameter = text_field(first_of(variable, "variableCode"), "value");
  if (!parameter)
    return tl::unexpected(failure(where, "no parameter code at " + place + "/variable/variableCode/0/value"));
  return Entry{.agency = text_field(first_of(source, "siteCode"), "agencyCode").value_or("USGS"),
               .site = *site,
               .site_name = text_field(source, "siteName").value_or(""),
               .parameter = *parameter,
               .statistic = statistic_of(variable),
               .unit = text_field(under(variable, "unit"), "unitCode").value_or(""),
               .no_data = no_data_of(variable)};
}

std::string method_id(const Json& block, std::size_t index) {
  const Json& id = under(first_of(block, "method"), "methodID");
  if (id.is_number_integer()) return id.dump();
  if (id.is_string()) return id.get<std::string>();
  return "block" + std::to_string(index);
}

// A date at midnight without a zone is a daily label, whatever the statistic says.
bool is_daily(const Entry& entry, const Json& rows) {
  if (!is_instantaneous(entry.statistic)) return true;
  if (rows.empty()) return false;
  const auto time = text_field(rows.front(), "dateTime");
  return time && !instant_in(*time) && date_label_in(*time);
}

GaugeSeries head_of(const Entry& entry, const Json& block, std::size_t index, const Json& rows, Variable variable,
                    const std::string& where) {
  return {.station = station_key(entry.agency, entry.site),
          .series_id = fmt::format("{}:{}:{}:{}:{}", entry.agency, entry.site, entry.parameter, entry.statistic,
                                   method_id(block, index)),
          .sensor = text_field(first_of(block, "method"), "methodDescription").value_or(""),
          .station_name = entry.site_name,
          .source = where,
          .variable = variable,
          .daily = is_daily(entry, rows),
          .issued = {},
          .readings = {},
          .unknown_codes = {}};
}

void shelve_row(SeriesShelf& shelf, std::size_t index, const Json& from, const Entry& entry, const UnitLine& unit,
                const std::string& place) {
  const std::string name = "series " + shown(shelf.at(index).series_id);
  const auto text = text_field(from, "dateTime");
  const Json* const value_text = field(from, "value");
  if (!text || value_text == nullptr) return shelf.leave_out(name, "no value with a dateTime", place);
  const auto time = shelf.at(index).daily ? date_label_in(*text) : instant_in(*text);
  if (!time)
    return shelf.leave_out(name, "the time can't be read, first \"" + shown(*text) + "\"", place + "/dateTime");
  const RowValue value = row_value(*value_text, entry.no_data);
  if (value.broken) return shelf.leave_out(name, *value.broken, place + "/value");

  Reading row{.time = *time, .si = {}, .marks = value.marks};
  if (value.number) row.si = unit.offset + unit.factor * *value.number;
  add_marks(codes_text(field(from, "qualifiers")), row.marks, shelf.at(index).unknown_codes);
  shelf.add(index, row);
}

std::optional<Failure> shelve_block(SeriesShelf& shelf, const Json& block, std::size_t index, const Entry& entry,
                                    const std::string& place, const std::string& where) {
  const Json* const rows = field(block, "value");
  if (rows == nullptr || !rows->is_array()) return failure(where, "no list of values at " + place + "/value");
  const auto variable = variable_of(entry.parameter);
  if (!variable) {
    shelf.not_used("parameter " + shown(entry.parameter), rows->size());
    return std::nullopt;
  }
  const GaugeSeries head = head_of(entry, block, index, *rows, *variable, where);
  const auto unit = unit_line(*variable, entry.unit);
  if (!unit) {
    shelf.leave_out("series " + shown(head.series_id), fmt::format("the unit \"{}\" is not known", shown(entry.unit)),
                    "", rows->size());
    return std::nullopt;
  }
  if (const std::string remark = remark_on(entry.parameter); !remark.empty()) shelf.remark(remark);
  const std::size_t at = shelf.place_for(head);
  std::size_t i = 0;
  for (const Json& row : *rows) shelve_row(shelf, at, row, entry, *unit, place + "/value/" + std::to_string(i++));
  return std::nullopt;
}

std::optional<Failure> shelve_entry(SeriesShelf& shelf, const Json& series, const std::string& place,
                                    const std::string& where) {
  const auto entry = entry_of(series, place, where);
  if (!entry) return entry.error();
  const Json& blocks = under(series, "values");
  if (!blocks.is_array()) return failure(where, "no list of blocks at " + place + "/values");
  std::size_t i = 0;
  for (const Json& block : blocks) {
    if (auto wrong = shelve_block(shelf, block, i, *entry, place + "/values/" + std::to_string(i), where)) return wrong;
    ++i;
  }
  return std::nullopt;
}

}  // namespace

bool is_usgs_legacy(std::string_view bytes) { return bytes.find("\"timeSeries\"") != std::string_view::npos; }

Result<GaugeAnswer> read_usgs_legacy(std::string_view bytes, const std::string& where) {
  const auto tree = json_tree(bytes, where);
  if (!tree) return tl::unexpected(tree.error());
  const Json& all = under(under(*tree, "value"), "timeSeries");
  if (!all.is_array()) {
    if (const auto error = error_in(*tree))
      return tl::unexpected(failure(where, "the service answered with an error, " + *error));
    return tl::unexpected(failure(where, "no list of series at /value/timeSeries"));
  }
  SeriesShelf shelf;
  std::size_t i = 0;
  for (const Json& series : all)
    if (const auto wrong = shelve_entry(shelf, series, "/value/timeSeries/" + std::to_string(i++), where))
      return tl::unexpected(*wrong);
  return shelf.answer();
}

}  // namespace floatwright
