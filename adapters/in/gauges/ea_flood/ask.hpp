#pragma once
// What the flood-monitoring service is asked: all readings of a station since the span began; it keeps about four
// weeks.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_ea_flood(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
