#include "adapters/in/gauges/usgs_rdb/read_stations.hpp"

#include <optional>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/in/gauges/usgs_rdb/rdb_rows.hpp"
#include "adapters/in/gauges/usgs_words.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {
namespace {

StationAbout station_in(const RdbRows& rows) {
  const auto text = [&](std::string_view column) { return rows.field(rows.column(column)); };
  StationAbout out;
  out.station = station_key(text("agency_cd"), text("site_no"));
  out.name = text("station_nm");
  out.site_type = text("site_tp_cd");
  out.state = text("state_cd");
  out.latitude_deg = number_in(text("dec_lat_va"));
  out.longitude_deg = number_in(text("dec_long_va"));
  out.zone = text("tz_cd");
  if (const auto observed = text("local_time_fg"); observed == "Y" || observed == "N")
    out.daylight_saving = observed == "Y";
  if (const auto area = number_in(text("drain_area_va"))) out.drainage_area = square_miles(*area);
  if (const auto altitude = number_in(text("alt_va"))) out.altitude = feet(*altitude);
  return out;
}

}  // namespace

Result<std::vector<StationAbout>> read_usgs_rdb_stations(std::string_view bytes, const std::string& where) {
  auto rows = RdbRows::begin(bytes, where);
  if (!rows) return tl::unexpected(rows.error());
  if (rows->table() > 0 && (!rows->column("site_no") || !rows->column("station_nm")))
    return tl::unexpected(Failure{where + ": no columns site_no and station_nm, so no list of stations", kExitBadData});
  std::vector<StationAbout> out;
  while (rows->next())
    if (rows->fault().empty() && !rows->field(rows->column("site_no")).empty()) out.push_back(station_in(*rows));
  return out;
}

}  // namespace floatwright
