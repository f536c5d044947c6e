#include "tests/fuzz/readers.hpp"

#include <cmath>

#include "adapters/in/text/utf8.hpp"
#include "adapters/in/gauges/csv_gauge/read_csv_gauge.hpp"
#include "adapters/in/gauges/payload.hpp"
#include "adapters/in/gauges/usgs_rdb/read_measurements.hpp"
#include "adapters/in/gauges/usgs_rdb/read_rating.hpp"
#include "adapters/in/gauges/usgs_rdb/read_stations.hpp"
#include "adapters/in/gauges/usgs_water_data/field_visits.hpp"
#include "adapters/in/gauges/usgs_water_data/stations.hpp"

namespace floatwright {
namespace {

const std::string kWhere = "fuzz";

std::string fault_of(const Failure& failure) {
  if (failure.exit_code != kExitBadData) return "a failure with the exit code " + std::to_string(failure.exit_code);
  if (!failure.what.starts_with(kWhere + ": ")) return "a failure without its place: " + failure.what;
  return first_bad_utf8(failure.what) ? "a failure that is no UTF-8" : "";
}

// What is printed as JSON must be UTF-8, and what is kept on disk in order.
std::string fault_of(const GaugeSeries& series) {
  for (const std::string& text : {series.station, series.series_id, series.sensor, series.station_name})
    if (first_bad_utf8(text)) return "a series with text that is no UTF-8";
  for (const std::string& code : series.unknown_codes)
    if (first_bad_utf8(code)) return "a code that is no UTF-8";
  if (series.station.find(':') == std::string::npos) return "a station without its service: " + series.station;
  for (std::size_t i = 0; i < series.readings.size(); ++i) {
    if (i > 0 && series.readings[i - 1].time >= series.readings[i].time) return "readings out of order";
    if (series.readings[i].si && !std::isfinite(*series.readings[i].si)) return "a value that is not finite";
  }
  return {};
}

std::string fault_of(const GaugeAnswer& answer) {
  for (const std::string& note : answer.notes)
    if (first_bad_utf8(note)) return "a note that is no UTF-8";
  for (const GaugeSeries& series : answer.series)
    if (std::string fault = fault_of(series); !fault.empty()) return fault;
  return {};
}

std::string fault_of(const Rating& rating) {
  const auto &low = rating.points.front(), &high = rating.points.back();
  const auto middle = flow_at(rating, Stage::from_si(0.5 * (low.stage.si() + high.stage.si())));
  if (!middle || !(*middle >= low.flow && *middle <= high.flow)) return "a discharge outside its rating";
  return {};
}

std::string fault_of(const std::vector<FieldMeasurement>& visits) {
  for (const FieldMeasurement& visit : visits) {
    if (visit.discharge && !std::isfinite(visit.discharge->si())) return "a discharge that is not finite";
    if (first_bad_utf8(visit.rated) || first_bad_utf8(visit.visit)) return "a visit's text that is no UTF-8";
  }
  return {};
}

std::string fault_of(const RdbMeasurements& read) { return fault_of(read.visits); }

std::string fault_of(const std::vector<StationAbout>& stations) {
  for (const StationAbout& station : stations)
    if (first_bad_utf8(station.name)) return "a station's name that is no UTF-8";
  return {};
}

template <class T>
std::string fault_in(const Result<T>& read) {
  return read ? fault_of(*read) : fault_of(read.error());
}

std::string fault_of_service(const std::string& name, std::string_view bytes) {
  for (const GaugeService& service : gauge_services()) {
    (void)service.recognises(bytes);
    if (service.name == name) return fault_in(service.read(bytes, kWhere));
  }
  return "no service " + name;
}

std::string fault_of_rating(const std::string&, std::string_view bytes) {
  return fault_in(read_usgs_rdb_rating(bytes, kWhere));
}

std::string fault_of_measurements(const std::string&, std::string_view bytes) {
  return fault_in(read_usgs_rdb_measurements(bytes, kWhere));
}

std::string fault_of_rdb_stations(const std::string&, std::string_view bytes) {
  return fault_in(read_usgs_rdb_stations(bytes, kWhere));
}

std::string fault_of_stations(const std::string&, std::string_view bytes) {
  UsgsStations all;
  if (const auto next = all.take(bytes, kWhere); !next) return fault_of(next.error());
  return fault_of(all.stations());
}

std::string fault_of_field_visits(const std::string&, std::string_view bytes) {
  UsgsFieldVisits all;
  if (const auto next = all.take(bytes, kWhere); !next) return fault_of(next.error());
  return fault_of(all.told().visits);
}

CsvGauge declared(CsvColumn time, CsvColumn value, std::string form, char separator) {
  CsvGauge out;
  out.station = "csv:ford";
  out.time = std::move(time);
  out.time_format = std::move(form);
  out.time_zone = "America/Denver";
  out.separator = separator;
  out.decimal_comma = separator == ';';
  out.missing = {"-9999", "n/a"};
  out.columns = {{.column = std::move(value), .quantity = Variable::GaugeHeight, .unit = "ft"}};
  return out;
}

std::string fault_of_csv_gauge(const std::string&, std::string_view bytes) {
  static const CsvGauge kByName = declared({"Time", 0}, {"Stage", 0}, "", ',');
  static const CsvGauge kByPlace = declared({"", 2}, {"", 3}, "%d.%m.%Y %H:%M", ';');
  std::string fault = fault_in(read_csv_gauge(bytes, kWhere, kByName));
  return fault.empty() ? fault_in(read_csv_gauge(bytes, kWhere, kByPlace)) : fault;
}

}  // namespace

const std::vector<FuzzedReader>& fuzzed_readers() {
  static const std::vector<FuzzedReader> kReaders = [] {
    std::vector<FuzzedReader> out{{"rating", fault_of_rating},
                                  {"usgs-rdb-measurements", fault_of_measurements},
                                  {"usgs-rdb-stations", fault_of_rdb_stations},
                                  {"csv-gauge", fault_of_csv_gauge},
                                  {"usgs-stations", fault_of_stations},
                                  {"usgs-field-visits", fault_of_field_visits}};
    for (const GaugeService& service : gauge_services()) out.push_back({service.name, fault_of_service});
    return out;
  }();
  return kReaders;
}

}  // namespace floatwright
