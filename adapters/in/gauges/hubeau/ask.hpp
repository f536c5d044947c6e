#pragma once
// What Hub'Eau is asked: stage and discharge of up to twenty stations together. It keeps a month and refuses spans
// that begin before, so at most thirty days before the end are asked for.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_hubeau(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
