#include "adapters/in/gauges/usgs_rdb/read_measurements.hpp"

#include <fmt/format.h>

#include <optional>

#include "adapters/in/calendar/written_time.hpp"
#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/text/printable.hpp"
#include "adapters/in/gauges/usgs_rdb/rdb_rows.hpp"
#include "adapters/in/gauges/usgs_rdb/zone_code.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

class MeasurementsReader {
 public:
  explicit MeasurementsReader(RdbRows& rows) : rows_(rows) {}

  void take_row() {
    if (!rows_.fault().empty()) return leave_out(rows_.fault());
    const std::string_view site = text("site_no"), number = text("measurement_nu");
    if (site.empty() || number.empty()) return leave_out("no station or no number of the measurement");
    const std::string station = station_key(text("agency_cd"), site);
    const bool goes_on =
        !out_.visits.empty() && out_.visits.back().station == station && out_.visits.back().visit == number;
    if (!goes_on && !begin_visit(station, std::string{number})) return;
    take_channel(out_.visits.back());
  }
  [[nodiscard]] RdbMeasurements told() && { return std::move(out_); }

 private:
  [[nodiscard]] std::string_view text(std::string_view column) const { return rows_.field(rows_.column(column)); }

  // None where the field is empty; what can't be read is told.
  std::optional<double> number(std::string_view column) {
    const std::string_view written = text(column);
    if (written.empty()) return std::nullopt;
    const auto value = number_in(written);
    if (!value)
      out_.notes.push_back(fmt::format("{}: {} left out: \"{}\" is no number", rows_.place(), column, printable(written)));
    return value;
  }

  // Old visits have a date alone, or an hour without a zone.
  bool take_time(FieldMeasurement& visit) {
    const std::string_view written = text("measurement_dt");
    visit.time = local_instant_in(written, text("tz_cd"));
    visit.date_only = !visit.time;
    if (!visit.time) visit.time = date_label_in(written.substr(0, 10));
    return visit.time.has_value();
  }

  bool begin_visit(const std::string& station, std::string number_of_visit) {
    FieldMeasurement visit;
    visit.station = station;
    visit.visit = std::move(number_of_visit);
    if (!take_time(visit)) {
      leave_out("the time can't be read, first \"" + printable(text("measurement_dt")) + "\"");
      return false;
    }
    if (const auto flow = number("discharge_va")) visit.discharge = cubic_feet_per_second(*flow);
    if (const auto stage = number("gage_height_va")) visit.stage = stage_feet(*stage);
    visit.rated = text("measured_rating_diff");
    visit.condition = text("control_type_cd");
    out_.visits.push_back(std::move(visit));
    return true;
  }

  // The total stands on each channel's row; the part is the channel's own.
  void take_channel(FieldMeasurement& visit) {
    const std::string type = lower_case(text("meas_type")), control = lower_case(text("control_type_cd"));
    visit.ice = visit.ice || type == "ice" || control.find("ice") != std::string::npos;
    MeasuredChannel channel;
    channel.name = text("chan_name");
    channel.type = text("meas_type");
    if (const auto flow = number("chan_discharge")) channel.discharge = cubic_feet_per_second(*flow);
    if (const auto width = number("chan_width")) channel.width = feet(*width);
    if (const auto area = number("chan_area")) channel.area = Area::from_si(*area * kMetresPerFoot * kMetresPerFoot);
    if (const auto speed = number("chan_velocity")) channel.speed = mean_feet_per_second(*speed);
    if (const auto distance = number("chan_loc_dist")) channel.from_gauge = feet(*distance);
    channel.direction = text("chan_loc_cd");
    if (channel.discharge || channel.width || channel.area || channel.speed)
      visit.channels.push_back(std::move(channel));
  }

  void leave_out(const std::string& why) { out_.notes.push_back(rows_.place() + ": left out: " + why); }

  RdbRows& rows_;
  RdbMeasurements out_;
};

}  // namespace

Result<RdbMeasurements> read_usgs_rdb_measurements(std::string_view bytes, const std::string& where) {
  auto rows = RdbRows::begin(bytes, where);
  if (!rows) return tl::unexpected(rows.error());
  MeasurementsReader reader(*rows);
  if (rows->table() > 0 && !rows->column("measurement_nu"))
    return tl::unexpected(Failure{where + ": no column measurement_nu, so no field measurements", kExitBadData});
  while (rows->next()) reader.take_row();
  return std::move(reader).told();
}

}  // namespace floatwright
