#pragma once
// The options that several commands share, and what their texts mean.
#include <chrono>
#include <filesystem>
#include <optional>
#include <string>

#include "adapters/cli/message.hpp"
#include "adapters/in/files/configuration.hpp"
#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace CLI {
class App;
}

namespace floatwright {

struct CommonOptions {
  std::string config, date = "", now, units, out;
  bool offline = false, quiet = false, verbose = false;
};

void add_config_option(CLI::App& command, CommonOptions& options);
void add_day_options(CLI::App& command, CommonOptions& options);    // --date --now --offline
void add_output_options(CLI::App& command, CommonOptions& options);  // --units --out --quiet --verbose

// --config, else FLOATWRIGHT_CONFIG, else $XDG_CONFIG_HOME/floatwright, else $HOME/.config/floatwright.
[[nodiscard]] Result<std::filesystem::path> configuration_directory(const CommonOptions& options);

// --now as an ISO 8601 instant with an offset or Z, else the clock.
[[nodiscard]] Result<Instant> instant_now(const CommonOptions& options);

// How many days ahead a plan may be asked for: two, or fifteen where a gauge names an official forecast; how far that
// reaches shows when it is read (why_no_day).
[[nodiscard]] std::chrono::days days_ahead(const River& river);

// --date today|tomorrow|YYYY-MM-DD on the river's clock; without it, today before `day_turns_at`, else tomorrow.
[[nodiscard]] Result<std::chrono::year_month_day> day_planned(const CommonOptions& options, const Configuration& configuration,
                                                              Instant now);

// Loads the configuration and tells every problem on standard error; the failure carries the exit code.
[[nodiscard]] Result<Configuration> configuration_or_told(const CommonOptions& options);

}  // namespace floatwright
