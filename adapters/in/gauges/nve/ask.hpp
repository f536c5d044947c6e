#pragma once
// What NVE HydAPI is asked: stage, discharge and water temperature as they were read, of up to ten stations together, a
// year a request. The key of one's own goes in a header; without it the service answers 401.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_nve(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
