#pragma once
// What the hydrology service is asked: flow, level and temperature of a station apart, at most a year a request; of
// flow and level the values of every quarter hour.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_ea_hydrology(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
