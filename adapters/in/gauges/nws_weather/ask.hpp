#pragma once
// What the National Weather Service is asked: the grid square of a point, "45.0100,-111.2000", whose answer names the
// forecast. The service wants no zeros at the end of a coordinate, and takes no span.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_nws_weather(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
