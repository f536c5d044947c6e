#include "adapters/out/state/cache_directory.hpp"

#include "adapters/out/state/own_directory.hpp"

namespace floatwright {

Result<std::filesystem::path> cache_directory() {
  return own_directory({"keep fishing tables in", "CACHE_DIRECTORY", "XDG_CACHE_HOME", ".cache"});
}

}  // namespace floatwright
