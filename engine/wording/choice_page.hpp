#pragma once
// The table behind each choice as a page, for --verbose: in each water of the stretch every line that was scored, by each
// method, with its seconds and why it is not the one.
#include "engine/choice_tables.hpp"
#include "engine/wording/page.hpp"

namespace floatwright {

[[nodiscard]] Page choice_page(const DayPlan& plan, const DayInputs& in, const std::vector<ChoiceTable>& tables);

}  // namespace floatwright
