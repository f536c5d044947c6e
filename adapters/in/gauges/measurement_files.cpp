#include "adapters/in/gauges/measurement_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/files/csv_rows.hpp"
#include "adapters/in/gauges/usgs_rdb/read_answer.hpp"
#include "adapters/in/gauges/usgs_rdb/read_measurements.hpp"
#include "adapters/in/gauges/usgs_water_data/field_visits.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

// A column's name without its unit, and what a number in it is in SI.
struct CsvName {
  std::string_view stem;
  double factor = 1.0;
};

constexpr std::array<std::pair<std::string_view, double>, 7> kUnitEndings{{{"_m3_s", 1.0},
                                                                           {"_m3s", 1.0},
                                                                           {"_cfs", kCubicMetresPerCubicFoot},
                                                                           {"_m_s", 1.0},
                                                                           {"_ft_s", kMetresPerFoot},
                                                                           {"_m", 1.0},
                                                                           {"_ft", kMetresPerFoot}}};

CsvName name_of_column(std::string_view written) {
  for (const auto& [ending, factor] : kUnitEndings)
    if (written.ends_with(ending)) return {written.substr(0, written.size() - ending.size()), factor};
  return {written, 1.0};
}

class MeasurementsCsv {
 public:
  explicit MeasurementsCsv(std::string_view bytes, const std::string& where) : rows_(bytes), where_(where) {}

  Result<Measurements> read() {
    if (!rows_.next(fields_)) return tl::unexpected(Failure{where_ + ": empty"});
    header_ = fields_;
    const auto date = find({"date"}), discharge = find({"discharge"}), depth = find({"mean_depth"}),
               width = find({"width", "top_width"}), speed = find({"mean_speed", "velocity"});
    if (!date || !discharge || !depth || !width || !speed)
      return tl::unexpected(Failure{fmt::format("{}: line 1: needs the columns date, discharge, width, mean_depth and mean_speed, each "
                                                "but the date with its unit as in discharge_m3_s or width_ft; there are {}",
                                                where_, printable(fmt::format("{}", fmt::join(header_, ", "))))});
    const auto station = find({"station", "site"});
    while (rows_.next(fields_)) take_row(station, *date, *discharge, *depth, *width, *speed);
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::optional<std::size_t> find(std::initializer_list<std::string_view> stems) const {
    for (std::size_t i = 0; i < header_.size(); ++i)
      if (std::find(stems.begin(), stems.end(), name_of_column(trimmed(header_[i])).stem) != stems.end()) return i;
    return std::nullopt;
  }
  [[nodiscard]] std::string_view cell(std::size_t column) const {
    return column < fields_.size() ? trimmed(fields_[column]) : std::string_view{};
  }
  [[nodiscard]] std::optional<double> si(std::size_t column) const {
    const auto number = number_in(cell(column));
    return number ? std::optional{*number * name_of_column(trimmed(header_[column])).factor} : std::nullopt;
  }

  void take_row(std::optional<std::size_t> station, std::size_t date, std::size_t discharge, std::size_t depth,
                std::size_t width, std::size_t speed) {
    const auto day = date_label_in(cell(date));
    const auto q = si(discharge), d = si(depth), w = si(width), v = si(speed);
    if (!rows_.fault().empty() || !day || !q || !d || !w || !v) {
      out_.troubles.push_back(fmt::format("{}: line {}: left out, it is no whole measurement ({})", where_, rows_.line(),
                                          !day ? "date" : !q ? "discharge" : !d ? "mean depth" : !w ? "width" : "mean speed"));
      return;
    }
    FieldMeasurement visit;
    if (station) visit.station = cell(*station);
    visit.visit = fmt::format("line {}", rows_.line());
    visit.time = *day;
    visit.date_only = true;
    visit.discharge = cubic_metres_per_second(*q);
    MeasuredChannel channel;
    channel.discharge = visit.discharge;
    channel.width = metres(*w);
    channel.area = square_metres(*w * *d);
    channel.speed = mean_metres_per_second(*v);
    visit.channels.push_back(channel);
    out_.visits.push_back(std::move(visit));
  }

  CsvRows rows_;
  std::string where_;
  std::vector<std::string> header_, fields_;
  Measurements out_;
};

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
  } else if (is_measurements_csv(bytes)) {
    auto read = read_measurements_csv(bytes, where);
    if (!read) all.troubles.push_back(read.error().what);
    if (read) add(all, std::move(*read));
  }
}

}  // namespace

bool is_field_measurements(std::string_view bytes) {
  return is_usgs_field_visits(bytes) || is_measurements_rdb(bytes) || is_measurements_csv(bytes);
}

Result<Measurements> read_measurements_csv(std::string_view bytes, const std::string& where) {
  return MeasurementsCsv(bytes, where).read();
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
