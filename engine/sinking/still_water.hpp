#pragma once
// A line counted down and drawn in through still water. A full sinking line sinks flat, at 0.9 of its still-water rate
// (0.87 to 0.99 in a chain of nodes). Pulled along itself it goes on sinking to the depth that it takes at the pace of
// the retrieve and keeps that level until little of it is out; a tip hangs from a floating line and is drawn up toward
// the rod.
#include <vector>

#include "engine/sinking/cast_path.hpp"

namespace floatwright {

struct StillWater {
  Length depth;  // of the lake where the fly is; a line is counted no deeper
  Temperature temperature = celsius(10.0);
};

enum class Retrieve { Sinking, Level, Rising };  // over its first half

// Depths are those of the lower end of what sinks; the fly is above or below it by up to its leader.
struct StillCount {
  Duration count;
  Length at_first, halfway, at_the_end;  // through the retrieve
  Length fly_at_first;
  Retrieve retrieve = Retrieve::Level;
  bool to_the_bed = false;  // the line lies on the bed before the first pull
};

// Where a sinking line is after a count, held flat or hanging.
[[nodiscard]] Length counted_depth(const SinkingPart& sinking, Duration count);
// The count that takes it there. Absent where the line does not sink, or its part is too short to hang so deep.
[[nodiscard]] Measured<Duration> count_to(const SinkingPart& sinking, Length depth);

// A row for each count, from the shortest on. Absent with the reason where the rig has no answer.
[[nodiscard]] Measured<std::vector<StillCount>> still_counts(const Tackle& tackle, const Rig& rig,
                                                             const StillWater& water,
                                                             const std::vector<Duration>& counts, Speed strip,
                                                             Length cast, Length rod);

}  // namespace floatwright
