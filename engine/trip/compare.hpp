#pragma once
// Which stretch: best worth first among those that break no limit and have a line that fishes; one whose flow is known
// all along stands before one with a gap. Ruled out ones last.
#include "engine/trip/planned_stretch.hpp"

namespace floatwright {

struct ComparedStretch {
  Stretch stretch;
  PlannedStretch planned;
  Scored how;
};

// All stretches of the day, the recommended one (if any) first.
[[nodiscard]] std::vector<ComparedStretch> compared(const RiverDay& day, WaterBook& book,
                                                    const DoEach& do_each = one_after_the_other);
// The same, the recommended one with the flows at which its choices change.
[[nodiscard]] std::vector<PlannedStretch> compared_stretches(const RiverDay& day, WaterBook& book, const DoEach& do_each);

}  // namespace floatwright
