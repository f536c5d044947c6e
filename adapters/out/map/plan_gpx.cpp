#include "adapters/out/map/plan_gpx.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <pugixml.hpp>
#include <sstream>

#include "adapters/out/map/map_point.hpp"
#include "engine/wording/float_plan_parts.hpp"

namespace floatwright {
namespace {

// U+FFFE and U+FFFF are characters that XML does not have; `typed` has dealt with the controls.
std::string xml_text(std::string text) {
  for (const char* none : {"\xEF\xBF\xBE", "\xEF\xBF\xBF"}) {
    for (auto at = text.find(none); at != std::string::npos; at = text.find(none, at)) text.replace(at, 3, "?");
  }
  return text;
}

void put_text(pugi::xml_node parent, const char* name, const std::string& text) {
  if (!text.empty()) parent.append_child(name).text().set(xml_text(text).c_str());
}

std::string words_of(const MapPoint& point) {
  return fmt::format("{}{}\n{}", point.place, point.part.empty() ? "" : ", " + point.part, fmt::join(point.lines, "\n"));
}

// Children in the order of the schema. A hazard is told by its name alone: a receiver may show nothing else.
void put_waypoint(pugi::xml_node gpx, const MapPoint& point) {
  pugi::xml_node waypoint = gpx.append_child("wpt");
  waypoint.append_attribute("lat").set_value(fmt::format("{:.6f}", map_degrees(point.at->latitude_deg)).c_str());
  waypoint.append_attribute("lon").set_value(fmt::format("{:.6f}", map_degrees(point.at->longitude_deg)).c_str());
  const bool hazard = point.kind == MapPointKind::Hazard;
  put_text(waypoint, "name", (hazard ? "HAZARD " : "") + point.name + (point.placed ? " (about here)" : ""));
  put_text(waypoint, "desc", words_of(point));
  put_text(waypoint, "type", kind_word(point.kind));
}

std::string file_words(const std::vector<MapPoint>& points) {
  std::string words = kFoot;
  for (const MapPoint& point : points) {
    if (!point.at) words += fmt::format("\nNOT ON THIS MAP: {} {}, {}. {}", kind_word(point.kind), point.name, point.place, fmt::join(point.lines, " "));
  }
  return words;
}

}  // namespace

std::string plan_gpx(const std::vector<BoatDay>& boats) {
  const auto points = map_points(boats);
  pugi::xml_document document;
  pugi::xml_node declaration = document.append_child(pugi::node_declaration);
  declaration.append_attribute("version").set_value("1.0");
  declaration.append_attribute("encoding").set_value("UTF-8");
  pugi::xml_node gpx = document.append_child("gpx");
  gpx.append_attribute("version").set_value("1.1");
  gpx.append_attribute("creator").set_value("floatwright");
  gpx.append_attribute("xmlns").set_value("http://www.topografix.com/GPX/1/1");
  pugi::xml_node metadata = gpx.append_child("metadata");
  put_text(metadata, "name", map_title(boats));
  put_text(metadata, "desc", file_words(points));
  put_text(metadata, "time", date::format("%FT%TZ", boats.front().plan.made_at));
  for (const MapPoint& point : points)
    if (point.at) put_waypoint(gpx, point);
  std::ostringstream out;
  document.save(out, "  ", pugi::format_indent, pugi::encoding_utf8);
  return out.str();
}

std::string plan_gpx(const DayPlan& plan, const DayInputs& in) { return plan_gpx({BoatDay{in, plan}}); }

}  // namespace floatwright
