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
  static const std::vector<GaugeService> kServices{
      {"wsc-realtime", "wsc", is_wsc_realtime, read_wsc_realtime, "https://wateroffice.ec.gc.ca", ask_wsc_realtime},
      {"wsc-datamart", "wsc", is_wsc_datamart, read_wsc_datamart},
      {"wsc-geomet", "wsc", is_wsc_geomet, read_wsc_geomet, "https://api.weather.gc.ca", ask_wsc_geomet},
      {"usgs-water-data", "usgs", is_usgs_water_data, read_usgs_water_data, "https://api.waterdata.usgs.gov/ogcapi/v1",
       ask_usgs_continuous},
      {"usgs-legacy", "usgs", is_usgs_legacy, read_usgs_legacy, "https://waterservices.usgs.gov/nwis", ask_usgs_legacy},
      {"usgs-waterml1", "usgs", is_usgs_waterml1, read_usgs_waterml1},
      {"usgs-rdb", "usgs", is_usgs_rdb, read_usgs_rdb},
      {"ea-flood", "ea", is_ea_flood, read_ea_flood, "https://environment.data.gov.uk/flood-monitoring", ask_ea_flood},
      {"ea-hydrology", "ea", is_ea_hydrology, read_ea_hydrology, "https://environment.data.gov.uk/hydrology",
       ask_ea_hydrology},
      {"nwps", "nwps", is_nwps, read_nwps, "https://api.water.noaa.gov/nwps/v1", ask_nwps},
      {"nws-weather", "nws", is_nws_weather, read_nws_weather, "https://api.weather.gov", ask_nws_weather},
      {"hubeau", "hubeau", is_hubeau, read_hubeau, "https://hubeau.eaufrance.fr/api/v2/hydrometrie", ask_hubeau},
      {"nve", "nve", is_nve, read_nve, "https://hydapi.nve.no/api/v1", ask_nve},
      {"foen", "foen", is_foen, read_foen, "https://api.existenz.ch/apiv1/hydro", ask_foen},
      {"waterml2", "waterml2", is_waterml2, read_waterml2}};
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
