#pragma once
// The ids under which the JSON plan names what only a plan has. Waters, lines, methods and marks have theirs from the
// tables that the files' readers use.
#include <string_view>

#include "engine/plan_day.hpp"

namespace floatwright::plan_names {

[[nodiscard]] std::string_view of(Verdict verdict);
[[nodiscard]] std::string_view of(Mending mending);
[[nodiscard]] std::string_view of(FlowState state);
[[nodiscard]] std::string_view of(FlowMethod method);
[[nodiscard]] std::string_view of(CautionKind kind);
[[nodiscard]] std::string_view of(LimitKind kind);

}  // namespace floatwright::plan_names
