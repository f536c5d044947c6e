#pragma once
// The whole table behind each choice of a planned day, for one who asks why not another line.
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

struct ChoiceTable {
  std::size_t reach, water;       // of the stretch
  std::vector<ScoredRig> scored;  // every rig that scored_rigs() names, best first
};

// In the order of the stretch, of each water that is fished; `floated` is a stretch of the plan of these inputs. Works
// the waters out anew: a plan does not keep what nobody asks for.
[[nodiscard]] std::vector<ChoiceTable> choice_tables(const DayInputs& in, const PlannedStretch& floated,
                                                     const DoEach& do_each = one_after_the_other);

}  // namespace floatwright
