#pragma once
// Bytes of a gauge service's answer -> readings. One folder per service; this file only asks each whether the bytes are
// its own. Never a sentinel past here; a page of HTML, a cut answer or a broken text is a Failure (65) with the place.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/in/gauges/service.hpp"

namespace floatwright {

[[nodiscard]] const std::vector<GaugeService>& gauge_services();

// An answer that goes on at a next page is a doubt; who follows calls GaugeService::read.
// `service`: a name from gauge_services(); none: the first that recognises the bytes.
[[nodiscard]] Result<GaugeAnswer> read_payload(std::string_view bytes, const std::string& where,
                                               const std::optional<std::string>& service = std::nullopt);

}  // namespace floatwright
