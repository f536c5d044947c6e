#pragma once
// What the collection hydrometric-realtime of the Meteorological Service of Canada is asked: one station a request,
// since whether it takes a list is not known.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_wsc_geomet(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
