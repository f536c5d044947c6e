#pragma once
// For commands that look back over years: all that is on record here of the configured gauges, without asking anyone.
#include <optional>
#include <string>
#include <vector>

#include "adapters/cli/common_options.hpp"
#include "engine/readings/gauge_record.hpp"

namespace floatwright {

// With --payload its directory in place of what settings.json reads; failure 66 where there is none.
[[nodiscard]] Result<Configuration> configuration_with_payload(const CommonOptions& options, const std::string& payload);

// By River::gauges, from `from` on; what could not be read is told on standard error.
[[nodiscard]] std::vector<GaugeRecord> whole_records(const CommonOptions& options, const Configuration& configuration,
                                                     Instant from, Instant now);

// --since: none where it is empty; failure 64 where it is no span of time.
[[nodiscard]] Result<std::optional<Period>> since_wanted(const std::string& typed);

}  // namespace floatwright
