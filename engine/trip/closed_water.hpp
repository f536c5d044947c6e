#pragma once
// Closures over the water of a plan: all that stand there on the day, since one may be for some hours and another for the
// whole day. What one of them closes is closed.
#include <string>
#include <vector>

#include "engine/trip/passages.hpp"

namespace floatwright {

// Indices into River::closures, of those that stand on the day over a place.
[[nodiscard]] std::vector<std::size_t> closures_over(const RiverDay& day, RiverPlace place);

// By one without hours.
[[nodiscard]] bool closed_all_day(const RiverDay& day, const Passage& passage);
// Those of the passage whose hours meet the time there, the ends included.
[[nodiscard]] std::vector<std::size_t> closures_met(const RiverDay& day, const Passage& passage, Instant arrive, Instant leave);
// Their reasons as typed, each once: "works at the bank; spawning fish".
[[nodiscard]] std::string why_closed(const River& river, const std::vector<std::size_t>& closures);

}  // namespace floatwright
