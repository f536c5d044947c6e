#pragma once
// Where a command reads and keeps its readings, and with which manners it asks for new ones.
#include <filesystem>
#include <optional>

#include "adapters/cli/common_options.hpp"
#include "adapters/in/fetch/gather.hpp"

namespace floatwright {

// In the directory that settings.json names, else in the program's own; none: there is no place for one.
[[nodiscard]] std::optional<std::filesystem::path> archive_file(const Configuration& configuration);

[[nodiscard]] GatherOrder gather_order(const CommonOptions& options, const Configuration& configuration, Instant now,
                                       Period fresh_enough);

}  // namespace floatwright
