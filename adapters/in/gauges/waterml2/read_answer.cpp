#include "adapters/in/gauges/waterml2/read_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "adapters/in/calendar/instants_in_order.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/row_value.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "adapters/in/gauges/waterml2/point_facts.hpp"
#include "adapters/in/gauges/xml_rows.hpp"

namespace floatwright {
namespace {

constexpr std::string_view kNamespace = "http://www.opengis.net/waterml/2.0";
constexpr XmlRowNames kNames{.row = "point", .block = "MeasurementTimeseries"};
constexpr std::array kNoData{-999999.0};  // the standard has no such number; one service's other forms do

// Lower case, without blanks.
constexpr std::array<std::pair<std::string_view, Variable>, 13> kProperties{
    {{"discharge", Variable::Flow},
     {"streamflow", Variable::Flow},
     {"riverdischarge", Variable::Flow},
     {"watercoursedischarge", Variable::Flow},
     {"stage", Variable::GaugeHeight},
     {"gageheight", Variable::GaugeHeight},
     {"gaugeheight", Variable::GaugeHeight},
     {"riverstage", Variable::GaugeHeight},
     {"riverlevel", Variable::GaugeHeight},
     {"watercourselevel", Variable::GaugeHeight},
     {"watertemperature", Variable::WaterTemperature},
     {"temperatureofwater", Variable::WaterTemperature},
     {"turbidity", Variable::Clarity}}};

std::optional<Variable> property_named(std::string_view name) {
  std::string text = lower_case(name);
  std::erase_if(text, [](char c) { return c == ' ' || c == '_' || c == '-'; });
  const auto* const found =
      std::find_if(kProperties.begin(), kProperties.end(), [&](const auto& row) { return row.first == text; });
  if (found == kProperties.end()) return variable_of(name);
  return found->second;
}

pugi::xml_node ancestor(pugi::xml_node node, std::string_view name) {
  while (node && !is_named(node, name)) node = node.parent();
  return node;
}

pugi::xml_node first_element(const pugi::xml_node& of) {
  pugi::xml_node child = of.first_child();
  while (child && child.type() != pugi::node_element) child = child.next_sibling();
  return child;
}

// Where a time series stands: in an observation, in a collection; either may be away.
struct Place {
  pugi::xml_node series, observation, collection, point;

  explicit Place(const pugi::xml_node& timeseries)
      : series(timeseries),
        observation(ancestor(timeseries, "OM_Observation")),
        collection(ancestor(timeseries, "Collection")),
        point(child_of(child_of(observation, "featureOfInterest"), "MonitoringPoint")) {}

  [[nodiscard]] std::string station() const {
    for (const pugi::xml_node& owner : {point, collection}) {
      const pugi::xml_node identifier = child_of(owner, "identifier");
      const std::string_view text = text_of(identifier);
      if (text.empty()) continue;
      const auto dot = text.find('.');
      const bool of_usgs = attribute_of(identifier, "codeSpace").find(".usgs.gov/") != std::string_view::npos;
      return of_usgs && dot != std::string_view::npos ? station_key(text.substr(0, dot), text.substr(dot + 1))
                                                      : "waterml2:" + std::string{text};
    }
    const std::string_view feature = word_of(child_of(observation, "featureOfInterest"));
    return "waterml2:" + std::string{feature.empty() ? attribute_of(series, "id") : feature};
  }
  [[nodiscard]] std::string_view id() const {
    const std::string_view own = attribute_of(series, "id");
    return own.empty() ? attribute_of(observation, "id") : own;
  }
  [[nodiscard]] std::string_view property() const { return word_of(child_of(observation, "observedProperty")); }
  [[nodiscard]] std::optional<Variable> variable() const {
    const pugi::xml_node observed = child_of(observation, "observedProperty");
    if (const auto by_link = property_named(word_of(observed))) return by_link;
    return property_named(attribute_of(observed, "title"));
  }
  // A series without an observation: cubic feet or metres a second can be nothing but discharge.
  [[nodiscard]] bool has_units_of_flow() const {
    std::set<std::string> ignored;
    return unit_line(Variable::Flow, point_facts(first_element(child_of(series, "defaultPointMetadata")), ignored).unit)
        .has_value();
  }
};

bool is_missing(const pugi::xml_node& value, std::string_view text) {
  if (text.empty() || ((text.front() == 'n' || text.front() == 'N') && lower_case(text) == "nan")) return true;
  const std::string_view nil = value.first_attribute() ? attribute_of(value, "nil") : std::string_view{};
  return nil == "true" || nil == "1";
}

// The parts of a point, found in one pass over them.
struct PointParts {
  pugi::xml_node time, value, metadata;

  explicit PointParts(const pugi::xml_node& point) {
    for (pugi::xml_node part = first_element(point).first_child(); part; part = part.next_sibling()) {
      if (is_named(part, "time"))
        time = part;
      else if (is_named(part, "value"))
        value = part;
      else if (is_named(part, "metadata"))
        metadata = first_element(part);
    }
  }
};

class SeriesReader {
 public:
  SeriesReader(SeriesShelf& shelf, const Place& place, Variable variable, const std::string& where)
      : shelf_(shelf), variable_(variable) {
    head_.station = place.station();
    head_.series_id = place.id();
    head_.station_name = attribute_of(child_of(place.observation, "featureOfInterest"), "title");
    head_.source = where;
    head_.variable = variable;
    standard_ = point_facts(first_element(child_of(place.series, "defaultPointMetadata")), head_.unknown_codes);
  }

  // Of the words met only now is it known which are not.
  void finish() {
    for (const auto& at : at_)
      if (at) shelf_.at(*at).unknown_codes = head_.unknown_codes;
  }

  void take(const XmlRow& point) {
    const PointParts parts(point.node);
    const std::string_view time_text = text_of(parts.time);
    if (time_text.empty()) {
      if (!text_of(parts.value).empty()) leave_out(point, "a value without a time");
      return;
    }
    const bool is_date = time_text.find('T') == std::string_view::npos;
    const auto time = is_date ? date_label_in(time_text) : instants_.next(time_text);
    if (!time) return leave_out(point, "the time can't be read, first \"" + printable(time_text) + "\"");
    if (parts.metadata) own_ = with_default(point_facts(parts.metadata, head_.unknown_codes), standard_);
    const PointFacts& facts = parts.metadata ? own_ : standard_;
    if (!is_date && !facts.over.empty() && (facts.over.find('D') != std::string_view::npos || facts.over == "PT24H"))
      return leave_out(point,
                       "a value of whole days (" + printable(facts.over) + ") at an instant, not known of which day");
    shelve(point, parts.value, {.time = *time, .si = {}, .marks = facts.all_marks()}, facts, is_date);
  }

 private:
  void shelve(const XmlRow& point, const pugi::xml_node& value, Reading row, const PointFacts& facts,
              bool is_date) {
    const std::string_view text = text_of(value);
    if (!facts.missing && !is_missing(value, text)) {
      if (facts.unit != unit_text_) unit_ = unit_line(variable_, unit_text_ = facts.unit);
      if (!unit_) return leave_out(point, fmt::format("the unit \"{}\" is not known", printable(facts.unit)));
      const RowValue read = row_value(text, kNoData);
      if (read.broken) return leave_out(point, *read.broken);
      row.marks.insert(read.marks);
      if (read.number) row.si = unit_->offset + unit_->factor * *read.number;
    }
    std::optional<std::size_t>& at = at_[is_date ? 1 : 0];
    head_.daily = is_date;
    if (!at) at = shelf_.place_for(head_);
    shelf_.add(*at, row);
  }

  void leave_out(const XmlRow& point, const std::string& why) {
    shelf_.leave_out("series " + printable(head_.series_id), why, [&] { return point.place(); });
  }

  SeriesShelf& shelf_;
  Variable variable_;
  GaugeSeries head_;
  PointFacts standard_, own_;  // of all points; of the one that is read now
  InstantsInOrder instants_;
  std::string unit_text_;       // of the point before, and what it stands for
  std::optional<UnitLine> unit_;
  std::array<std::optional<std::size_t>, 2> at_;  // on the shelf: of instants, of days
};

void shelve_series(SeriesShelf& shelf, XmlTree& tree, const pugi::xml_node& timeseries,
                   const std::string& where) {
  const Place place(timeseries);
  auto variable = place.variable();
  const auto points = [&] { return rows_in(tree, timeseries, kNames.row); };
  if (!place.observation && place.has_units_of_flow()) {
    variable = Variable::Flow;
    shelf.remark("series " + printable(place.id()) +
                 ": no observation says what was measured; read as discharge by its unit");
  } else if (!place.observation) {
    return shelf.leave_out("series " + printable(place.id()), "no observation around it says what was measured",
                           tree.place_of(timeseries), points());
  }
  if (!variable) return shelf.not_used("property \"" + printable(place.property()) + "\"", points());
  SeriesReader reader(shelf, place, *variable, where);
  for_each_row(tree, timeseries, kNames.row, [&](const XmlRow& point) { reader.take(point); });
  reader.finish();
}

// Wherever they stand: services wrap their observations in different ways.
std::vector<pugi::xml_node> all_series(const pugi::xml_node& root) {
  std::vector<pugi::xml_node> out;
  for (pugi::xml_node node = root; node;) {
    const bool found = is_named(node, kNames.block);
    if (found) out.push_back(node);
    if (!found && node.first_child()) {
      node = node.first_child();
      continue;
    }
    while (node != root && !node.next_sibling()) node = node.parent();
    node = node == root ? pugi::xml_node{} : node.next_sibling();
  }
  return out;
}

Result<GaugeAnswer> answer_in(XmlTree& tree, const std::string& where) {
  SeriesShelf shelf;
  const auto all = all_series(tree.root);
  if (all.empty() && local_name(tree.root) != "Collection")
    return tl::unexpected(
        Failure{fmt::format("{}: no MeasurementTimeseries of WaterML 2.0 under the root element \"{}\"", where,
                            printable(tree.root.name())),
                kExitBadData});
  for (const pugi::xml_node& timeseries : all) shelve_series(shelf, tree, timeseries, where);
  return std::move(shelf).answer();
}

}  // namespace

bool is_waterml2(std::string_view bytes) {
  const std::string_view start = bytes.substr(0, 4096);
  return begins_as_xml(start) && start.find(kNamespace) != std::string_view::npos;
}

Result<GaugeAnswer> read_waterml2(std::string_view bytes, const std::string& where) {
  return read_xml(bytes, where, kNames, [&](XmlTree& tree) { return answer_in(tree, where); });
}

}  // namespace floatwright
