#include "adapters/in/gauges/payload.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "adapters/in/gauges/ea_flood/ask.hpp"
#include "adapters/in/gauges/ea_flood/read_answer.hpp"
#include "adapters/in/gauges/ea_hydrology/ask.hpp"
#include "adapters/in/gauges/ea_hydrology/read_answer.hpp"
#include "adapters/in/gauges/foen/ask.hpp"
#include "adapters/in/gauges/foen/read_answer.hpp"
#include "adapters/in/gauges/hubeau/ask.hpp"
#include "adapters/in/gauges/hubeau/read_answer.hpp"
#include "adapters/in/gauges/json_rows.hpp"
#include "adapters/in/gauges/nve/ask.hpp"
#include "adapters/in/gauges/nve/read_answer.hpp"
#include "adapters/in/gauges/nwps/ask.hpp"
#include "adapters/in/gauges/nwps/read_answer.hpp"
#include "adapters/in/gauges/nws_weather/ask.hpp"
#include "adapters/in/gauges/nws_weather/read_answer.hpp"
#include "adapters/in/gauges/service_error.hpp"
#include "adapters/in/gauges/usgs_legacy/ask.hpp"
#include "adapters/in/gauges/usgs_legacy/read_answer.hpp"
#include "adapters/in/gauges/usgs_rdb/read_answer.hpp"
#include "adapters/in/gauges/usgs_water_data/ask.hpp"
#include "adapters/in/gauges/usgs_water_data/read_answer.hpp"
#include "adapters/in/gauges/usgs_waterml1/read_answer.hpp"
#include "adapters/in/gauges/waterml2/read_answer.hpp"
#include "adapters/in/gauges/wsc_datamart/read_answer.hpp"
#include "adapters/in/gauges/wsc_geomet/ask.hpp"
#include "adapters/in/gauges/wsc_geomet/read_answer.hpp"
#include "adapters/in/gauges/wsc_realtime/ask.hpp"
#include "adapters/in/gauges/wsc_realtime/read_answer.hpp"
#include "adapters/in/gauges/xml_tree.hpp"

namespace floatwright {
namespace {

std::string service_names() {
  std::string out;
  for (const GaugeService& service : gauge_services()) out += (out.empty() ? "" : ", ") + service.name;
  return out;
}

// Bytes that no service claims: say what is wrong with them, as far as can be seen.
Failure nobodys(std::string_view bytes, const std::string& where) {
  const auto unclaimed = [&](const std::string& form) {
    return fmt::format("{}: {}, but no answer of a service that is read here ({})", where, form, service_names());
  };
  if (begins_as_xml(bytes) && xml_tree(bytes, where)) return {unclaimed("XML"), kExitBadData};
  static const JsonShape kNothing{{}, {}};
  if (const auto sound = read_json_rows(bytes, where, kNothing, {}); !sound) return sound.error();
  if (const auto error = service_error(bytes))
    return {fmt::format("{}: the service answered with an error, {}", where, *error), kExitBadData};
  return {unclaimed("JSON"), kExitBadData};
}

// Here nobody follows to a next page.
Result<GaugeAnswer> as_a_whole(Result<GaugeAnswer> answer) {
  if (!answer || !answer->next) return answer;
  std::size_t rows = 0;
  for (const GaugeSeries& series : answer->series) rows += series.readings.size();
  const std::string told = fmt::format("the answer goes on at a next page; {} rows is not the whole", rows);
  answer->notes.push_back(told);
  answer->doubts.push_back(told);
  return answer;
}

}  // namespace

// The first of a prefix is the one that is asked. Canada stands before USGS Water Data, which takes any list of
// features for its own.
const std::vector<GaugeService>& gauge_services() {
  constexpr Period kDay = std::chrono::days{1};
  static const std::vector<GaugeService> kServices{
      {.name = "wsc-realtime", .prefix = "wsc", .recognises = is_wsc_realtime, .read = read_wsc_realtime,
       .address = "https://wateroffice.ec.gc.ca", .ask = ask_wsc_realtime, .longest = kDay * 62, .keeps = kDay * 548},
      {.name = "wsc-datamart", .prefix = "wsc", .recognises = is_wsc_datamart, .read = read_wsc_datamart},
      {.name = "wsc-geomet", .prefix = "wsc", .recognises = is_wsc_geomet, .read = read_wsc_geomet,
       .address = "https://api.weather.gc.ca", .ask = ask_wsc_geomet, .keeps = kDay * 30},
      {.name = "usgs-water-data", .prefix = "usgs", .recognises = is_usgs_water_data, .read = read_usgs_water_data,
       .address = "https://api.waterdata.usgs.gov/ogcapi/v1", .ask = ask_usgs_continuous},
      {.name = "usgs-legacy", .prefix = "usgs", .recognises = is_usgs_legacy, .read = read_usgs_legacy,
       .address = "https://waterservices.usgs.gov/nwis", .ask = ask_usgs_legacy, .longest = kDay * 120},
      {.name = "usgs-waterml1", .prefix = "usgs", .recognises = is_usgs_waterml1, .read = read_usgs_waterml1},
      {.name = "usgs-rdb", .prefix = "usgs", .recognises = is_usgs_rdb, .read = read_usgs_rdb},
      {.name = "ea-flood", .prefix = "ea", .recognises = is_ea_flood, .read = read_ea_flood,
       .address = "https://environment.data.gov.uk/flood-monitoring", .ask = ask_ea_flood, .keeps = kDay * 28},
      {.name = "ea-hydrology", .prefix = "ea", .recognises = is_ea_hydrology, .read = read_ea_hydrology,
       .address = "https://environment.data.gov.uk/hydrology", .ask = ask_ea_hydrology},
      {.name = "nwps", .prefix = "nwps", .recognises = is_nwps, .read = read_nwps,
       .address = "https://api.water.noaa.gov/nwps/v1", .ask = ask_nwps, .keeps = kDay * 30},
      {.name = "nws-weather", .prefix = "nws", .recognises = is_nws_weather, .read = read_nws_weather,
       .address = "https://api.weather.gov", .ask = ask_nws_weather, .names_its_station = false, .keeps = kDay * 7},
      {.name = "hubeau", .prefix = "hubeau", .recognises = is_hubeau, .read = read_hubeau,
       .address = "https://hubeau.eaufrance.fr/api/v2/hydrometrie", .ask = ask_hubeau, .keeps = kDay * 30},
      {.name = "nve", .prefix = "nve", .recognises = is_nve, .read = read_nve,
       .address = "https://hydapi.nve.no/api/v1", .ask = ask_nve},
      {.name = "foen", .prefix = "foen", .recognises = is_foen, .read = read_foen,
       .address = "https://api.existenz.ch/apiv1/hydro", .ask = ask_foen, .longest = kDay * 30},
      {.name = "waterml2", .prefix = "waterml2", .recognises = is_waterml2, .read = read_waterml2}};
  return kServices;
}

Result<GaugeAnswer> read_payload(std::string_view bytes, const std::string& where,
                                 const std::optional<std::string>& service) {
  const auto& all = gauge_services();
  const auto found = std::find_if(all.begin(), all.end(), [&](const GaugeService& s) {
    return service ? s.name == *service : s.recognises(bytes);
  });
  if (found != all.end()) return as_a_whole(found->read(bytes, where));
  if (!service) return tl::unexpected(nobodys(bytes, where));
  return tl::unexpected(
      Failure{fmt::format("no gauge service \"{}\"; there are {}", *service, service_names()), kExitUsage});
}

}  // namespace floatwright
