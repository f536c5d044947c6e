#include "adapters/in/gauges/usgs_waterml1/read_answer.hpp"

#include <fmt/format.h>

#include <optional>
#include <vector>

#include "adapters/in/calendar/instants_in_order.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "adapters/in/gauges/xml_rows.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kNamespace = "http://www.cuahsi.org/waterML/1.1/";
constexpr XmlRowNames kNames{.row = "value", .block = "values"};
constexpr double kUsualNoData = -999999.0;

// What holds for all blocks of one entry.
struct Entry {
  std::string agency, site, site_name, parameter, statistic, unit;
  std::vector<double> no_data;
};

std::string statistic_of(const pugi::xml_node& variable) {
  for (const pugi::xml_node option : child_of(variable, "options").children())
    if (attribute_of(option, "name") == "Statistic" && !attribute_of(option, "optionCode").empty())
      return std::string{attribute_of(option, "optionCode")};
  return "00000";
}

std::optional<Entry> entry_of(const pugi::xml_node& series) {
  const pugi::xml_node source = child_of(series, "sourceInfo"), variable = child_of(series, "variable");
  const pugi::xml_node site = child_of(source, "siteCode");
  Entry out{.agency = std::string{attribute_of(site, "agencyCode")},
            .site = std::string{text_of(site)},
            .site_name = std::string{text_of(child_of(source, "siteName"))},
            .parameter = std::string{text_of(child_of(variable, "variableCode"))},
            .statistic = statistic_of(variable),
            .unit = std::string{text_of(child_of(child_of(variable, "unit"), "unitCode"))},
            .no_data = {kUsualNoData}};
  if (out.site.empty() || out.parameter.empty()) return std::nullopt;
  if (out.agency.empty()) out.agency = "USGS";
  if (const auto code = number_in(text_of(child_of(variable, "noDataValue")))) out.no_data.push_back(*code);
  return out;
}

// A date at midnight without a zone is a daily label, whatever the statistic says.
bool is_daily(const Entry& entry, const pugi::xml_node& block) {
  if (!is_instantaneous(entry.statistic)) return true;
  const std::string_view time = attribute_of(child_of(block, "value"), "dateTime");
  return !instant_in(time) && date_label_in(time);
}

GaugeSeries head_of(const Entry& entry, const pugi::xml_node& block, std::size_t index, const std::string& where) {
  const pugi::xml_node method = last_child_of(block, "method");  // it mostly stands behind the values
  const std::string_view id = attribute_of(method, "methodID");
  GaugeSeries out;
  out.station = station_key(entry.agency, entry.site);
  out.series_id = fmt::format("{}:{}:{}:{}:{}", entry.agency, entry.site, entry.parameter, entry.statistic,
                              id.empty() ? fmt::format("block{}", index) : std::string{id});
  out.sensor = text_of(child_of(method, "methodDescription"));
  out.station_name = entry.site_name;
  out.source = where;
  out.variable = *variable_of(entry.parameter);
  out.daily = is_daily(entry, block);
  return out;
}

// The rows of one block.
class BlockReader {
 public:
  BlockReader(SeriesShelf& shelf, const GaugeSeries& head, const UnitLine& unit, const Entry& entry)
      : shelf_(shelf), at_(shelf.place_for(head)), unit_(unit), entry_(entry), daily_(head.daily) {}

  void take(const XmlRow& row) {
    std::string_view time_text, codes;
    int times = 0;
    for (pugi::xml_attribute attribute = row.node.first_attribute(); attribute; attribute = attribute.next_attribute()) {
      const std::string_view name = attribute.name();
      if (is_local_name(name, "dateTime") && ++times > 0)
        time_text = attribute.value();
      else if (is_local_name(name, "qualifiers"))
        codes = attribute.value();
    }
    if (times != 1) return leave_out(row, times == 0 ? "no dateTime" : "more than one dateTime");
    const auto time = daily_ ? date_label_in(time_text) : instants_.next(time_text);
    if (!time) return leave_out(row, "the time can't be read, first \"" + printable(time_text) + "\"");
    const RowValue value = row_value(text_of(row.node), entry_.no_data);
    if (value.broken) return leave_out(row, *value.broken);
    Reading reading{.time = *time, .si = {}, .marks = value.marks};
    if (value.number) reading.si = unit_.offset + unit_.factor * *value.number;
    reading.marks.insert(codes == last_codes_ ? last_marks_ : marks_of(codes));
    shelf_.add(at_, reading);
  }

 private:
  // Most rows have the codes of the row before.
  Marks marks_of(std::string_view codes) {
    last_codes_ = codes;
    last_marks_ = {};
    add_marks(codes, last_marks_, shelf_.at(at_).unknown_codes);
    return last_marks_;
  }

  void leave_out(const XmlRow& row, const std::string& why) {
    shelf_.leave_out("series " + printable(shelf_.at(at_).series_id), why, [&] { return row.place(); });
  }

  SeriesShelf& shelf_;
  std::size_t at_;
  const UnitLine& unit_;
  const Entry& entry_;
  bool daily_;
  InstantsInOrder instants_;
  std::string last_codes_;
  Marks last_marks_;
};

void shelve_block(SeriesShelf& shelf, XmlTree& tree, const pugi::xml_node& block, std::size_t index,
                  const Entry& entry, const std::string& where) {
  const auto variable = variable_of(entry.parameter);
  if (!variable) return shelf.not_used("parameter " + printable(entry.parameter), rows_in(tree, block, kNames.row));
  const GaugeSeries head = head_of(entry, block, index, where);
  const auto unit = unit_line(*variable, entry.unit.empty() ? usual_unit(entry.parameter) : entry.unit);
  if (!unit)
    return shelf.leave_out("series " + printable(head.series_id),
                           fmt::format("the unit \"{}\" is not known", printable(entry.unit)), tree.place_of(block),
                           rows_in(tree, block, kNames.row));
  if (entry.unit.empty())
    shelf.remark(fmt::format("parameter {}: no unit is written; read as {}, which the parameter's code stands for",
                             entry.parameter, usual_unit(entry.parameter)));
  if (const std::string remark = remark_on(entry.parameter); !remark.empty()) shelf.remark(remark);
  BlockReader reader(shelf, head, *unit, entry);
  for_each_row(tree, block, kNames.row, [&](const XmlRow& row) { reader.take(row); });
}

std::optional<Failure> shelve_series(SeriesShelf& shelf, XmlTree& tree, const pugi::xml_node& series,
                                     const std::string& where) {
  const auto entry = entry_of(series);
  if (!entry)
    return Failure{
        fmt::format("{}: {}: a timeSeries without a siteCode or a variableCode", where, tree.place_of(series)),
        kExitBadData};
  std::size_t index = 0;
  for (const pugi::xml_node block : series.children())
    if (local_name(block) == kNames.block) shelve_block(shelf, tree, block, index++, *entry, where);
  return std::nullopt;
}

Result<GaugeAnswer> answer_in(XmlTree& tree, const std::string& where) {
  if (local_name(tree.root) != "timeSeriesResponse" || name_space(tree.root) != kNamespace)
    return tl::unexpected(
        Failure{fmt::format("{}: the root element is \"{}\", not the timeSeriesResponse of WaterML 1.1", where,
                            printable(tree.root.name())),
                kExitBadData});
  SeriesShelf shelf;
  for (const pugi::xml_node series : tree.root.children())
    if (local_name(series) == "timeSeries")
      if (auto wrong = shelve_series(shelf, tree, series, where)) return tl::unexpected(*wrong);
  return std::move(shelf).answer();
}

}  // namespace

bool is_usgs_waterml1(std::string_view bytes) {
  const std::string_view start = bytes.substr(0, 4096);
  return begins_as_xml(start) && start.find(kNamespace) != std::string_view::npos;
}

Result<GaugeAnswer> read_usgs_waterml1(std::string_view bytes, const std::string& where) {
  return read_xml(bytes, where, kNames, [&](XmlTree& tree) { return answer_in(tree, where); });
}

}  // namespace floatwright
