#pragma once
// What the older USGS service is asked: instantaneous values of a span, several stations at once. The service ends on
// 22 February 2027 (its own notice of 18 September 2026); until then it answers slower and slower.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_usgs_legacy(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
