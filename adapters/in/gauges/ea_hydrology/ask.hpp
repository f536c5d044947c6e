#pragma once
// What the hydrology service is asked: all readings of a station, at most a year a request.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_ea_hydrology(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
