#pragma once
// Every stretch between two accesses that could be floated, and the hard limits. A stretch that breaks one stays in the
// list with the limit and is never recommended. The boat's limits are held against all three cases of flow.
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"
#include "engine/trip/timetable.hpp"

namespace floatwright {

struct Stretch {
  std::size_t put_in = 0, take_out = 0;  // indices into River::accesses
  std::optional<std::size_t> spot{};       // index into River::spots, instead of accesses
  Timetable times{};
  std::optional<BrokenLimit> broken{};     // the first that is broken, before any choice of line
};

// Pairs of accesses, the second downstream of the first, from the source down; with `from` or `to` in the settings only
// those. Each with its timetable, ruled out or not. Over 24 accesses those below a stretch far too long are left out.
[[nodiscard]] std::vector<Stretch> stretches(const RiverDay& day);

// A phrase without numbers: "The boat needs more water than the low case has at Quarry shelf".
[[nodiscard]] std::string say_limit(const BrokenLimit& limit);

}  // namespace floatwright
