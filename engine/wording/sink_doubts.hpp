#pragma once
// What `sink` says of how far its numbers can be trusted, and of the bed: a sentence each.
#include <string>
#include <vector>

#include "engine/wording/sink_page.hpp"

namespace floatwright {

// Snags, and a band or a tip that passes 0.9 of the depth.
[[nodiscard]] std::vector<std::string> say_bed(const SinkAsked& asked, const RigInWater& fished);

// Nothing was compared with a line in a real river; the band; turbulence where it bites; a nominal rate that can't be.
[[nodiscard]] std::vector<std::string> say_doubts(const SinkAsked& asked, const RigInWater& fished);

// Of a nominal sink rate that a line of this weight can hardly have; empty where there is nothing to say.
[[nodiscard]] std::string say_optimistic(const Line& line, UnitSystem units);

inline constexpr const char* kNeverCompared = "No depth here was compared with a fly line in a real river.";

}  // namespace floatwright
