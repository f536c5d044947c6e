#include "adapters/in/gauges/verticals_csv.hpp"

#include <fmt/format.h>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/measured_csv.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "engine/water/described.hpp"
#include "engine/water/midsection.hpp"

namespace floatwright {
namespace {

struct WadedVisit {
  std::string station, date;
  int line = 0;  // of its first vertical
  std::vector<Vertical> verticals;
  std::string why_not;  // the first row that can't be read
};

struct VerticalColumns {
  std::optional<std::size_t> date, station;
  std::optional<MeasuredCsv::Column> across, depth, mean, surface;
};

VerticalColumns vertical_columns_of(const MeasuredCsv& csv) {
  return {csv.find({"date"}), csv.find({"station", "site"}), csv.find({"distance"}, ColumnOf::Lengths),
          csv.find({"depth"}, ColumnOf::Lengths), csv.find({"mean_speed", "velocity"}, ColumnOf::Speeds),
          csv.find({"surface_speed"}, ColumnOf::Speeds)};
}

bool are_there(const VerticalColumns& c) { return c.date && c.across && c.depth && (c.mean || c.surface); }

WadedVisit& visit_of_row(const MeasuredCsv& csv, const VerticalColumns& columns, std::vector<WadedVisit>& visits) {
  const std::string date{csv.cell(columns.date)}, station{csv.cell(columns.station)};
  const bool goes_on = !visits.empty() && (date.empty() || date == visits.back().date) &&
                       (station.empty() || station == visits.back().station);
  if (!goes_on) {
    const std::string above = visits.empty() ? "" : visits.back().station;
    visits.push_back({station.empty() ? above : station, date.empty() && !visits.empty() ? visits.back().date : date, csv.line(), {}, {}});
  }
  return visits.back();
}

void take_vertical(const MeasuredCsv& csv, const VerticalColumns& columns, WadedVisit& visit) {
  const auto across = csv.si(*columns.across), depth = csv.si(*columns.depth);
  auto speed = columns.mean ? csv.si(*columns.mean) : std::nullopt;
  if (!speed && columns.surface)
    if (const auto surface = csv.si(*columns.surface)) speed = kMeanOverSurface * *surface;
  if (csv.sound() && across && depth && speed) {
    visit.verticals.push_back({metres(*across), metres(*depth), mean_metres_per_second(*speed)});
  } else if (visit.why_not.empty()) {
    visit.why_not = fmt::format("line {} is no whole vertical ({})", csv.line(), !across ? "distance" : !depth ? "depth" : "speed");
  }
}

FieldMeasurement waded_measurement(const WadedVisit& visit, Instant day, const SectionMeasured& section, const std::string& where) {
  FieldMeasurement made;
  made.station = visit.station;
  made.visit = fmt::format("{}, line {}", where.substr(where.rfind('/') + 1), visit.line);
  made.time = day;
  made.date_only = true;
  made.discharge = section.discharge;
  MeasuredChannel channel;
  channel.type = "Wading";
  channel.discharge = section.discharge;
  channel.width = section.width;
  channel.area = section.area;
  channel.speed = mean_metres_per_second(section.discharge.si() / section.area.si());
  made.channels.push_back(std::move(channel));
  return made;
}

void add_visit(WadedVisit visit, const std::string& where, Measurements& out) {
  const auto day = date_label_in(visit.date);
  const auto section = midsection(visit.verticals);
  if (visit.why_not.empty() && !day) visit.why_not = "its date is no day such as 2027-05-14";
  if (visit.why_not.empty() && !section.has_value()) visit.why_not = section.why_absent();
  if (visit.why_not.empty()) return out.visits.push_back(waded_measurement(visit, *day, *section, where));
  out.troubles.push_back(fmt::format("{}: the verticals from line {} are left out: {}", where, visit.line, visit.why_not));
}

}  // namespace

bool is_verticals_csv(std::string_view bytes) {
  const std::string first = lower_case(bytes.substr(0, bytes.find('\n')));
  const auto names = [&](std::string_view word) { return first.find(word) != std::string::npos; };
  return names("distance") && names("depth") && (names("speed") || names("velocity")) && first.find(',') != std::string::npos;
}

Result<Measurements> read_verticals_csv(std::string_view bytes, const std::string& where) {
  MeasuredCsv csv(bytes);
  const VerticalColumns columns = vertical_columns_of(csv);
  if (!are_there(columns))
    return tl::unexpected(Failure{fmt::format("{}: line 1: verticals need the columns date, distance, depth and mean_speed or "
                                              "surface_speed, each but the date with its unit as in depth_ft; there are {}",
                                              where, csv.header())});
  std::vector<WadedVisit> visits;
  while (csv.next()) take_vertical(csv, columns, visit_of_row(csv, columns, visits));
  Measurements out;
  for (WadedVisit& visit : visits) add_visit(std::move(visit), where, out);
  return out;
}

}  // namespace floatwright
