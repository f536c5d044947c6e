#include "engine/choice/angler.hpp"

#include <algorithm>

namespace floatwright {

std::vector<Platform> platforms_fished(const Preferences& preferences) {
  std::vector<Platform> allowed = preferences.platforms;
  const bool someone_wades = std::ranges::any_of(preferences.anglers, &Angler::wades);
  if (someone_wades && std::ranges::find(allowed, Platform::Wading) == allowed.end())
    allowed.push_back(Platform::Wading);
  return allowed;
}

}  // namespace floatwright
