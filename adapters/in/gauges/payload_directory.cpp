#include "adapters/in/gauges/payload_directory.hpp"

#include <algorithm>
#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <utility>

#include "adapters/in/gauges/measurement_files.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "adapters/in/gauges/series_shelf.hpp"
#include "adapters/in/gauges/usgs_water_data/stations.hpp"

namespace floatwright {
namespace {

namespace fs = std::filesystem;

std::optional<std::string> bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return std::nullopt;
  std::ostringstream out;
  out << in.rdbuf();
  return in.bad() ? std::nullopt : std::optional{out.str()};
}

const std::set<std::string> kEndings{".json", ".xml", ".rdb", ".csv"};

std::vector<fs::path> payload_files(const fs::path& directory, std::error_code& error) {
  std::vector<fs::path> out;
  for (fs::directory_iterator entry{directory, error}, end; !error && entry != end; entry.increment(error)) {
    const std::string name = entry->path().filename().string();
    std::error_code unreadable;
    if (name.front() != '.' && kEndings.contains(entry->path().extension().string()) && entry->is_regular_file(unreadable))
      out.push_back(entry->path());
  }
  std::sort(out.begin(), out.end());
  return out;
}

void shelve(SeriesShelf& shelf, std::map<std::size_t, Instant>& reach, const GaugeSeries& series) {
  const std::size_t at = shelf.place_for(series);
  shelf.at(at).unknown_codes.insert(series.unknown_codes.begin(), series.unknown_codes.end());
  if (series.readings.empty()) return;
  const Instant newest = series.readings.back().time;
  const auto [known, is_new] = reach.try_emplace(at, newest);
  if (is_new || newest >= known->second) {
    known->second = newest;
    shelf.at(at).source = series.source;
  }
  for (const Reading& row : series.readings) shelf.add(at, row, newest);
}

}  // namespace

Payloads read_payload_text(const std::string& bytes, const std::string& where) {
  auto answer = read_payload(bytes, where);
  if (!answer) return {.series = {}, .troubles = {answer.error().what}};
  Payloads out{.series = std::move(answer->series), .troubles = {}};
  for (const std::string& doubt : answer->doubts) out.troubles.push_back(where + ": " + doubt);
  return out;
}

Payloads merged(const std::vector<Payloads>& all) {
  Payloads out;
  SeriesShelf shelf;
  std::map<std::size_t, Instant> reach;
  for (const Payloads& one : all) {
    out.troubles.insert(out.troubles.end(), one.troubles.begin(), one.troubles.end());
    for (const GaugeSeries& series : one.series) shelve(shelf, reach, series);
  }
  out.series = std::move(shelf).answer().series;
  return out;
}

Payloads read_payload_directory(const fs::path& directory) {
  std::error_code error;
  const auto files = payload_files(directory, error);
  if (error) return {.series = {}, .troubles = {directory.string() + ": can't be listed (" + error.message() + ")"}};
  std::vector<Payloads> all;
  for (const fs::path& file : files) {
    const auto bytes = bytes_of(file);
    if (bytes && (is_usgs_stations(*bytes) || is_field_measurements(*bytes))) continue;
    all.push_back(
        bytes ? read_payload_text(*bytes, file.string())
              : Payloads{.series = {}, .troubles = {file.string() + ": can't be read; look at its permissions"}});
  }
  return merged(all);
}

Result<std::vector<StationAbout>> stations_in_payload_directory(const fs::path& directory) {
  std::error_code error;
  UsgsStations all;
  for (const fs::path& file : payload_files(directory, error)) {
    const auto bytes = bytes_of(file);
    if (!bytes || !is_usgs_stations(*bytes)) continue;
    const auto next = all.take(*bytes, file.string());
    if (!next) return tl::unexpected(next.error());
  }
  if (error)
    return tl::unexpected(Failure{directory.string() + ": can't be listed (" + error.message() + ")", kExitNoInput});
  return all.stations();
}

}  // namespace floatwright
