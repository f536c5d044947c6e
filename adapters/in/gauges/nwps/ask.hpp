#pragma once
// What the National Water Prediction Service is asked: what was observed and the forecast of a gauge, by its own name
// or by its USGS number. It takes no span.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_nwps(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
