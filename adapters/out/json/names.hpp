#pragma once
// The ids under which kinds of things stand in the JSON plan: those of the files that people write, where they have
// them.
#include "engine/plan_day.hpp"

namespace floatwright::plan_names {

[[nodiscard]] const char* of(Verdict verdict);
[[nodiscard]] const char* of(WaterType type);
[[nodiscard]] const char* of(Bed bed);
[[nodiscard]] const char* of(DepthSource source);
[[nodiscard]] const char* of(LineKind kind);
[[nodiscard]] const char* of(Method method);
[[nodiscard]] const char* of(Mending mending);
[[nodiscard]] const char* of(Platform platform);
[[nodiscard]] const char* of(FlowState state);
[[nodiscard]] const char* of(FlowMethod method);
[[nodiscard]] const char* of(Variable variable);
[[nodiscard]] const char* unit_of(Variable variable);
[[nodiscard]] const char* of(Mark mark);
[[nodiscard]] const char* of(CautionKind kind);
[[nodiscard]] const char* of(LimitKind kind);

}  // namespace floatwright::plan_names
