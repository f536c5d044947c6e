#pragma once
// What the gateway to FOEN is asked: columns of up to ten stations together, at most 30 days a request. Its dates begin
// at 00:00 UTC, so that the day after the last one is named as the end.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_foen(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
