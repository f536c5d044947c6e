#pragma once
// A directory of this program's own for one purpose, as the XDG Base Directory Specification 0.8 and systemd.exec(5)
// have it. Made with mode 0700 where it is missing.
#include <filesystem>

#include "adapters/result.hpp"

namespace floatwright {

struct OwnDirectory {
  const char* purpose;   // reads after "no directory to "
  const char* managers;  // variable of the service manager; the first of several paths
  const char* users;     // variable of the user, over "floatwright"
  const char* at_home;   // below $HOME, over "floatwright"
};
// Failure 73 when no such name is set or the directory can't be made; it says what to set.
[[nodiscard]] Result<std::filesystem::path> own_directory(const OwnDirectory& wanted);

}  // namespace floatwright
