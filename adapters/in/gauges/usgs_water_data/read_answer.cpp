#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"

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

constexpr double kLegacyNoData = -999999.0;  // never sent by this service so far; never a reading either

struct Properties {
  std::string series, location, parameter, time, unit;
  std::optional<std::string> statistic;
  const Json* value = nullptr;
};

// `lacking`: the property for whose sake the feature is no reading.
std::optional<Properties> properties_of(const Json& properties, std::string& lacking) {
  Properties out;
  const auto need = [&](const char* key, std::string& into) {
    const auto text = text_field(properties, key);
    if (!text && lacking.empty()) lacking = key;
    into = text.value_or("");
  };
  need("time_series_id", out.series);
  need("monitoring_location_id", out.location);
  need("parameter_code", out.parameter);
  need("time", out.time);
  if (lacking.empty() && field(properties, "statistic_id") == nullptr) lacking = "statistic_id";
  out.value = field(properties, "value");
  if (lacking.empty() && out.value == nullptr) lacking = "value";
  out.statistic = text_field(properties, "statistic_id");
  out.unit = text_field(properties, "unit_of_measure").value_or("");
  return lacking.empty() ? std::optional{out} : std::nullopt;
}

std::string station_of(const std::string& location) {
  const auto hyphen = location.find('-');
  if (hyphen == std::string::npos) return station_key("", location);
  return station_key(location.substr(0, hyphen), location.substr(hyphen + 1));
}

GaugeSeries head_of(const Properties& from, Variable variable, const std::string& where) {
  const bool date_only = from.time.find('T') == std::string::npos;
  const bool daily = date_only || (from.statistic && !is_instantaneous(*from.statistic));
  return {.station = station_of(from.location),
          .series_id = from.series,
          .sensor = {},
          .station_name = {},
          .source = where,
          .variable = variable,
          .daily = daily,
          .issued = {},
          .readings = {},
          .unknown_codes = {}};
}

void shelve_row(SeriesShelf& shelf, const Properties& from, const Json& properties, const UnitLine& unit,
                const GaugeSeries& head, const std::string& place) {
  const std::string name = "series " + shown(from.series);
  const auto time = head.daily ? date_label_in(from.time) : instant_in(from.time);
  if (!time)
    return shelf.leave_out(name, "the time can't be read, first \"" + shown(from.time) + "\"", place + "/time");
  RowValue value = row_value(*from.value, {kLegacyNoData});
  if (value.broken) return shelf.leave_out(name, *value.broken, place + "/value");

  const std::size_t index = shelf.place_for(head);
  Reading row{.time = *time, .si = {}, .marks = value.marks};
  if (value.number) row.si = unit.offset + unit.factor * *value.number;
  add_marks(codes_text(field(properties, "approval_status")), row.marks, shelf.at(index).unknown_codes);
  add_marks(codes_text(field(properties, "qualifier")), row.marks, shelf.at(index).unknown_codes);
  const auto changed = text_field(properties, "last_modified");
  shelf.add(index, row, changed ? instant_in(*changed) : std::nullopt);
}

void shelve(SeriesShelf& shelf, const Json& feature, const std::string& place, const std::string& where,
            std::string& first_lack) {
  static const Json kNothing;
  const Json* const found = field(feature, "properties");
  const Json& properties = found == nullptr ? kNothing : *found;
  std::string lacking;
  const auto from = properties_of(properties, lacking);
  if (!from) {
    if (first_lack.empty()) first_lack = place + "/properties/" + lacking;
    return shelf.leave_out("features", "no " + lacking + " as text, so no readings", place);
  }
  const auto variable = variable_of(from->parameter);
  if (!variable) return shelf.not_used("parameter " + shown(from->parameter));
  const auto unit = unit_line(*variable, from->unit);
  if (!unit)
    return shelf.leave_out(
        "series " + shown(from->series),
        fmt::format("the unit \"{}\" of parameter {} is not known", shown(from->unit), from->parameter),
        place + "/properties/unit_of_measure");
  if (const std::string remark = remark_on(from->parameter); !remark.empty()) shelf.remark(remark);
  shelve_row(shelf, *from, properties, *unit, head_of(*from, *variable, where), place + "/properties");
}

std::optional<std::string> next_link(const Json& tree) {
  const Json* const links = field(tree, "links");
  if (links == nullptr || !links->is_array()) return std::nullopt;
  for (const Json& link : *links)
    if (text_field(link, "rel") == "next") return text_field(link, "href");
  return std::nullopt;
}

Failure failure(const std::string& where, const std::string& what) { return {where + ": " + what, kExitBadData}; }

Result<UsgsPage> page_of(const Json& tree, const Json& features, const std::string& where) {
  SeriesShelf shelf;
  std::string first_lack;
  std::size_t i = 0, lacking_features = 0;
  for (const Json& feature : features) {
    std::string lack;
    shelve(shelf, feature, "/features/" + std::to_string(i++), where, lack);
    if (!lack.empty()) ++lacking_features;
    if (first_lack.empty()) first_lack = lack;
  }
  if (!features.empty() && lacking_features == features.size())
    return tl::unexpected(failure(where, "the features are no readings: nothing readable at " + first_lack +
                                             "; the collections read are continuous, latest-continuous, daily, "
                                             "latest-daily"));
  const Json* const told = field(tree, "numberReturned");
  if (told != nullptr && told->is_number_unsigned() && told->get<std::size_t>() != features.size())
    shelf.doubt(
        fmt::format("the answer says it holds {} rows and holds {}", told->get<std::size_t>(), features.size()));
  return UsgsPage{shelf.answer(), features.size(), next_link(tree)};
}

}  // namespace

bool is_usgs_water_data(std::string_view bytes) {
  return bytes.find("\"FeatureCollection\"") != std::string_view::npos;
}

Result<UsgsPage> read_usgs_water_data_page(std::string_view bytes, const std::string& where) {
  const auto tree = json_tree(bytes, where);
  if (!tree) return tl::unexpected(tree.error());
  const Json* const features = field(*tree, "features");
  if (features == nullptr) {
    if (const auto error = error_in(*tree))
      return tl::unexpected(failure(where, "the service answered with an error, " + *error));
    return tl::unexpected(failure(where, "no list of features at /features"));
  }
  if (!features->is_array()) return tl::unexpected(failure(where, "/features is no list"));
  return page_of(*tree, *features, where);
}

Result<GaugeAnswer> read_usgs_water_data(std::string_view bytes, const std::string& where) {
  auto page = read_usgs_water_data_page(bytes, where);
  if (!page) return tl::unexpected(page.error());
  if (page->next) {
    const std::string told = fmt::format("the answer goes on at a next page; {} rows is not the whole", page->features);
    page->answer.notes.push_back(told);
    page->answer.doubts.push_back(told);
  }
  return page->answer;
}

}  // namespace floatwright
