#pragma once
// What the real-time web service of the Water Survey of Canada is asked. Its limit is a number of rows that it does not
// publish: 18 months of one station are known to go through, so several stations share a request only for short spans.
#include <vector>

#include "adapters/in/gauges/service.hpp"
#include "adapters/in/http/http_run.hpp"

namespace floatwright {

[[nodiscard]] std::vector<HttpRequest> ask_wsc_realtime(const Wanted& wanted, const ServiceAccess& access);

}  // namespace floatwright
