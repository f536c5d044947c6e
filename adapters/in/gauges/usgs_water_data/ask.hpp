#pragma once
// What USGS Water Data (OGC API Features, versions 0 and 1) is asked. Stations are asked together, by GET while the
// address is short, else by POST with a filter in CQL2; an answer may go on at a next page, by the same method and with
// the same body. A key goes in a header.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

// Readings as they were sent, at most 3 years a request, as the service has it.
[[nodiscard]] std::vector<HttpRequest> ask_usgs_continuous(const Wanted& wanted, const ServiceAccess& access);
// Daily means: the record that reaches back for decades.
[[nodiscard]] std::vector<HttpRequest> ask_usgs_daily(const Wanted& wanted, const ServiceAccess& access);
// What the service says of the stations themselves, and of the series that it keeps there.
[[nodiscard]] std::vector<HttpRequest> ask_usgs_stations(const std::vector<std::string>& stations,
                                                         const ServiceAccess& access);
[[nodiscard]] std::vector<HttpRequest> ask_usgs_series(const std::vector<std::string>& stations,
                                                       const ServiceAccess& access);
// What was measured by hand at the stations (field-measurements), and in which channels (channel-measurements).
[[nodiscard]] std::vector<HttpRequest> ask_usgs_visits(const std::vector<std::string>& stations,
                                                       const ServiceAccess& access);

}  // namespace floatwright
