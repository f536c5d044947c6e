#pragma once
// What the person wants and can do: methods with preference, the cast, wading; from settings.json.
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

struct Angler {
  std::string name;
  Length cast = metres(12.0);  // rod tip to fly
  bool wades = false;
};

struct Preferences {
  std::map<Method, double> methods;  // preference over 0 to 1; a method not in it is never advised
  std::vector<Angler> anglers;       // at least one
  int rods_aboard = 3;
  std::set<std::size_t> rods_elsewhere{};  // indices into Tackle::rods: of a pool, those that are not for this boat
  std::vector<Platform> platforms{Platform::Drifting, Platform::Held, Platform::Anchored};
};

// From the boat as preferred; on foot too where someone wades.
[[nodiscard]] std::vector<Platform> platforms_fished(const Preferences& preferences);

}  // namespace floatwright
