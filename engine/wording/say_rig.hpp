#pragma once
// A rig as an angler says it: the line by its kind, length and sink rate, then the leader, then the fly.
#include <string>

#include "engine/choice/choose.hpp"
#include "engine/trip/settings.hpp"

namespace floatwright {

// "sinking tip 12 1/2 ft 5 in/s"; with a looped tip "looped head, tip 10 ft 7 in/s".
[[nodiscard]] std::string say_line(const Tackle& tackle, const Rig& rig, UnitSystem units);
// For a subject: "12 1/2 ft tip 5 in/s", "10 ft sinking leader 4 in/s"; lines without a sinking part as `say_line`.
[[nodiscard]] std::string say_line_briefly(const Tackle& tackle, const Rig& rig, UnitSystem units);
// "leader 3 1/2 ft"; for the indicator "indicator: 7 1/2 ft to fly, 0.9 g in all".
[[nodiscard]] std::string say_leader(const Tackle& tackle, const ScoredRig& rig, UnitSystem units);
// "weighted streamer size 6", with shot ", 0.4 g shot"
[[nodiscard]] std::string say_fly(const Tackle& tackle, const Rig& rig);
// "sinking tip 12 1/2 ft 5 in/s, leader 3 1/2 ft, weighted streamer"
[[nodiscard]] std::string say(const Tackle& tackle, const ScoredRig& rig, UnitSystem units);
// "9 ft 6-wt"
[[nodiscard]] std::string say(const Rod& rod, UnitSystem units);
// Index of the rod a line is on; Tackle::rods.size() where it is on none.
[[nodiscard]] std::size_t rod_of(const Tackle& tackle, const Rig& rig);

}  // namespace floatwright
