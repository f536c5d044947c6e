#pragma once
// Where what must outlive a run is kept: the plan handed out last, letters that could not be delivered.
#include <filesystem>

#include "adapters/result.hpp"

namespace floatwright {

// $STATE_DIRECTORY (systemd.exec(5); the first of several), else $XDG_STATE_HOME/floatwright, else
// $HOME/.local/state/floatwright (XDG Base Directory Specification 0.8). Made with mode 0700 when it is missing.
// Failure 73 when no such name is set or the directory can't be made; it says what to set.
[[nodiscard]] Result<std::filesystem::path> state_directory();

}  // namespace floatwright
