#include "adapters/in/gauges/measurement_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/gauges/measured_csv.hpp"
#include "adapters/in/gauges/usgs_rdb/read_answer.hpp"
#include "adapters/in/gauges/usgs_rdb/read_measurements.hpp"
#include "adapters/in/gauges/usgs_water_data/field_visits.hpp"
#include "adapters/in/gauges/verticals_csv.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

struct VisitColumns {
  std::optional<std::size_t> date, station;
  std::optional<MeasuredCsv::Column> discharge, depth, width, speed;
};

VisitColumns visit_columns_of(const MeasuredCsv& csv) {
  return {csv.find({"date"}), csv.find({"station", "site"}), csv.find({"discharge"}, ColumnOf::Flows),
          csv.find({"mean_depth"}, ColumnOf::Lengths), csv.find({"width", "top_width"}, ColumnOf::Lengths),
          csv.find({"mean_speed", "velocity"}, ColumnOf::Speeds)};
}

void take_visit(const MeasuredCsv& csv, const VisitColumns& columns, const std::string& where, Measurements& out) {
  const auto day = date_label_in(csv.cell(columns.date));
  const auto q = csv.si(*columns.discharge), d = csv.si(*columns.depth), w = csv.si(*columns.width), v = csv.si(*columns.speed);
  if (!csv.sound() || !day || !q || !d || !w || !v) {
    out.troubles.push_back(fmt::format("{}: line {}: left out, it is no whole measurement ({})", where, csv.line(),
                                       !day ? "date" : !q ? "discharge" : !d ? "mean depth" : !w ? "width" : "mean speed"));
    return;
  }
  FieldMeasurement visit;
  visit.station = csv.cell(columns.station);
  visit.visit = fmt::format("line {}", csv.line());
  visit.time = *day;
  visit.date_only = true;
  visit.discharge = cubic_metres_per_second(*q);
  MeasuredChannel channel;
  channel.discharge = visit.discharge;
  channel.width = metres(*w);
  channel.area = square_metres(*w * *d);
  channel.speed = mean_metres_per_second(*v);
  visit.channels.push_back(channel);
  out.visits.push_back(std::move(visit));
}

bool is_measurements_csv(std::string_view bytes) {
  const std::string first = lower_case(bytes.substr(0, bytes.find('\n')));
  return first.find("discharge") != std::string::npos && first.find("width") != std::string::npos &&
         first.find("depth") != std::string::npos;
}

bool is_measurements_rdb(std::string_view bytes) {
  return is_usgs_rdb(bytes) && bytes.find("measurement_nu") != std::string_view::npos;
}

void add(Measurements& all, Measurements&& more) {
  std::move(more.visits.begin(), more.visits.end(), std::back_inserter(all.visits));
  std::move(more.troubles.begin(), more.troubles.end(), std::back_inserter(all.troubles));
}

template <class Told>
Measurements with_place(Told&& told, const std::string& where) {
  Measurements out{std::move(told.visits), {}};
  for (const std::string& note : told.notes) out.troubles.push_back(where + ": " + note);
  return out;
}

std::string bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

// Pages of the collections belong together, so all of them go into one.
void take_file(const fs::path& file, Measurements& all, UsgsFieldVisits& pages) {
  const std::string bytes = bytes_of(file), where = file.string();
  if (is_usgs_field_visits(bytes)) {
    if (const auto taken = pages.take(bytes, where); !taken) all.troubles.push_back(taken.error().what);
  } else if (is_measurements_rdb(bytes)) {
    auto read = read_usgs_rdb_measurements(bytes, where);
    if (!read) all.troubles.push_back(read.error().what);
    if (read) add(all, with_place(std::move(*read), where));
  } else if (is_measurements_csv(bytes) || is_verticals_csv(bytes)) {
    auto read = is_measurements_csv(bytes) ? read_measurements_csv(bytes, where) : read_verticals_csv(bytes, where);
    if (!read) all.troubles.push_back(read.error().what);
    if (read) add(all, std::move(*read));
  }
}

}  // namespace

bool is_field_measurements(std::string_view bytes) {
  return is_usgs_field_visits(bytes) || is_measurements_rdb(bytes) || is_measurements_csv(bytes) ||
         is_verticals_csv(bytes);
}

Result<Measurements> read_measurements_csv(std::string_view bytes, const std::string& where) {
  MeasuredCsv csv(bytes);
  const VisitColumns columns = visit_columns_of(csv);
  if (!columns.date || !columns.discharge || !columns.depth || !columns.width || !columns.speed)
    return tl::unexpected(Failure{fmt::format("{}: line 1: needs the columns date, discharge, width, mean_depth and mean_speed, each "
                                              "but the date with its unit as in discharge_m3_s or width_ft; there are {}",
                                              where, csv.header())});
  Measurements out;
  while (csv.next()) take_visit(csv, columns, where, out);
  return out;
}

Measurements read_measurement_directory(const fs::path& directory) {
  std::error_code error;
  std::vector<fs::path> files;
  for (fs::directory_iterator entry{directory, error}, end; !error && entry != end; entry.increment(error)) {
    std::error_code unreadable;
    if (entry->path().filename().string().front() != '.' && entry->is_regular_file(unreadable)) files.push_back(entry->path());
  }
  std::sort(files.begin(), files.end());
  Measurements all;
  UsgsFieldVisits pages;
  for (const fs::path& file : files) take_file(file, all, pages);
  add(all, with_place(pages.told(), directory.string()));
  return all;
}

}  // namespace floatwright
