#pragma once
// The IANA zone of a place in the United States, from the state and the abbreviation of its standard time, which is all
// that gauge services say.
#include <optional>
#include <string>

namespace floatwright {

struct LikelyZone {
  std::string name;      // "America/Denver"
  bool by_both = false;  // the abbreviation is one of the state's; else the state alone decided
};

// `state` as it is written in full, "Montana"; `abbreviation` of standard time, "MST". Where two zones of a state have
// the same, daylight saving decides (Arizona: the Navajo Nation has it). None: an unknown state, or one of several
// zones with an abbreviation that is none of theirs.
[[nodiscard]] std::optional<LikelyZone> zone_of_state(const std::string& state, const std::string& abbreviation,
                                                      std::optional<bool> daylight_saving);

}  // namespace floatwright
