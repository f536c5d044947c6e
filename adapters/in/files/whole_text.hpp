#pragma once
// Reads a file to its end.
#include <filesystem>
#include <string>

#include "adapters/result.hpp"

namespace floatwright {

// Failure 66 with the reason when it is not there, is a folder, cannot be opened, or is larger than a person writes.
[[nodiscard]] Result<std::string> read_whole_text(const std::filesystem::path& path);

// Whether others than the owner may read it (any of the group's and others' mode bits): a secret must not be so.
[[nodiscard]] bool is_readable_by_others(const std::filesystem::path& path);

}  // namespace floatwright
