#pragma once
// What it takes to go from one rig to another on the same rod. The dearest change that applies is the whole of it: a
// new spool comes strung and rigged, a new tip with its leader, a new leader with its fly. Shot goes on with the fly.
#include "engine/choice/angler.hpp"
#include "engine/choice/judgement.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

// Swung and stripped flies share a leader; the other methods have one each.
enum class LeaderClass { Streamer, Indicator, TightLine, Dry };
[[nodiscard]] LeaderClass leader_class(Method method);

struct Carried {
  Rig rig;
  LeaderClass leader = LeaderClass::Streamer;
  friend bool operator==(const Carried&, const Carried&) = default;
};

[[nodiscard]] Duration change_time(const Carried& from, const Carried& to, const ChangesJudgement& judgement);

// On a rod of the pool that is not for this boat.
[[nodiscard]] bool is_elsewhere(const Rig& rig, const Tackle& tackle, const Preferences& preferences);

// A looped tip makes another line of its head.
[[nodiscard]] bool same_line(const Rig& a, const Rig& b);

}  // namespace floatwright
