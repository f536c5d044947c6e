#pragma once
// A damaged archive is kept under another name, for what can still be read out of it.
#include <filesystem>
#include <optional>

#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

// Renames `file` and its write-ahead log to "<file>.damaged-20270513T194500Z". No connection of this process may be
// open. Gives the new name; none: it was no longer damaged, since another process had done it before.
[[nodiscard]] Result<std::optional<std::filesystem::path>> put_aside_if_damaged(const std::filesystem::path& file,
                                                                                Instant now);

}  // namespace floatwright
