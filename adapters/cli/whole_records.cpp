#include "adapters/cli/whole_records.hpp"

#include <fmt/format.h>

#include "adapters/cli/gather_order.hpp"
#include "adapters/in/calendar/written_period.hpp"

namespace floatwright {
namespace {

constexpr Period kLongestSince = std::chrono::years{100};

}  // namespace

Result<Configuration> configuration_with_payload(const CommonOptions& options, const std::string& payload) {
  auto configuration = configuration_or_told(options);
  if (!configuration || payload.empty()) return configuration;
  if (!std::filesystem::is_directory(payload))
    return tl::unexpected(Failure{fmt::format("--payload {}: no such directory", payload), kExitNoInput});
  configuration->readings.payloads = payload;
  return configuration;
}

std::vector<GaugeRecord> whole_records(const CommonOptions& options, const Configuration& configuration, Instant from,
                                       Instant now) {
  CommonOptions offline = options;
  offline.offline = true;
  const Payloads payloads = gather_series(configuration, stations_of(configuration.river), from,
                                          gather_order(offline, configuration, now, Period{0}));
  for (const auto& trouble : payloads.troubles) say_beside(trouble);
  std::vector<GaugeRecord> records;
  for (const GaugeSite& gauge : configuration.river.gauges)
    records.push_back(gauge_record(gauge.id, gauge.station, payloads.series, "", now));
  return records;
}

Result<std::optional<Period>> since_wanted(const std::string& typed) {
  if (typed.empty()) return std::nullopt;
  const auto period = period_in(typed);
  if (period && *period <= kLongestSince) return period;
  return tl::unexpected(
      Failure{fmt::format("--since: found \"{}\"; give a span of time as P5Y, P30D or PT12H", typed), kExitUsage});
}

}  // namespace floatwright
