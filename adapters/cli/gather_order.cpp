#include "adapters/cli/gather_order.hpp"

#include <chrono>
#include <random>

#include "adapters/in/text/plain_text.hpp"
#include "adapters/out/state/state_directory.hpp"

namespace floatwright {

std::optional<std::filesystem::path> archive_file(const Configuration& configuration) {
  if (configuration.readings.archive) return *configuration.readings.archive / kArchiveFile;
  if (const auto own = state_directory()) return *own / kArchiveFile;
  return std::nullopt;
}

GatherOrder gather_order(const CommonOptions& options, const Configuration& configuration, Instant now,
                         Period fresh_enough) {
  GatherOrder out{.fetch = {.now = now,
                            .clock = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()),
                            .fresh_enough = fresh_enough,
                            .since = {},
                            .manners = {}},
                  .offline = options.offline,
                  .archive = archive_file(configuration)};
  out.fetch.manners.user_agent = "floatwright (" + without_controls(configuration.readings.contact) + ")";
  out.fetch.manners.jitter_seed = std::random_device{}();
  return out;
}

}  // namespace floatwright
