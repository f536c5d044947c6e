#include "adapters/out/state/state_directory.hpp"

#include "adapters/out/state/own_directory.hpp"

namespace floatwright {

Result<std::filesystem::path> state_directory() {
  return own_directory({"remember things in", "STATE_DIRECTORY", "XDG_STATE_HOME", ".local/state"});
}

}  // namespace floatwright
