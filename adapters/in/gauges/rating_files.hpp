#pragma once
// The ratings that river.json names, read beside it.
#include "adapters/in/files/configuration.hpp"

namespace floatwright {

// Fills in GaugeSite::rating. A file that can't be read, holds no rating or another station's is a problem of its own
// (file, what was found, mend), and then there is no configuration (78).
[[nodiscard]] LoadedConfiguration with_ratings(LoadedConfiguration loaded);

}  // namespace floatwright
