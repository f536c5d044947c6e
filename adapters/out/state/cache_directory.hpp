#pragma once
// Where what can be worked out again is kept, so that it need not be: the fishing tables.
#include <filesystem>

#include "adapters/result.hpp"

namespace floatwright {

// $CACHE_DIRECTORY (systemd.exec(5); the first of several), else $XDG_CACHE_HOME/floatwright, else
// $HOME/.cache/floatwright (XDG Base Directory Specification 0.8). Made with mode 0700 when it is missing.
// Failure 73 when no such name is set or the directory can't be made; it says what to set.
[[nodiscard]] Result<std::filesystem::path> cache_directory();

}  // namespace floatwright
