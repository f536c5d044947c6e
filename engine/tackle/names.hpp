#pragma once
// The words of tackle.json, settings.json and the JSON plan for line kinds and methods.
#include "engine/tackle/tackle.hpp"
#include "engine/units/words.hpp"

namespace floatwright {

inline constexpr WordTable<LineKind, 11> kLineKindWords{
    {{LineKind::Floating, "floating"},
     {LineKind::NymphTaper, "nymph_taper"},
     {LineKind::DoubleTaper, "double_taper"},
     {LineKind::ShootingHead, "shooting_head"},
     {LineKind::FloatingWithSinkingLeader, "floating_with_sinking_leader"},
     {LineKind::SinkingTip, "sinking_tip"},
     {LineKind::LoopedHead, "looped_head"},
     {LineKind::ClearTip, "clear_tip"},
     {LineKind::FullSinking, "full_sinking"},
     {LineKind::ThinNymphLine, "thin_nymph_line"},
     {LineKind::MonoRig, "mono_rig"}}};
inline constexpr WordTable<Method, 5> kMethodWords{{{Method::Swing, "swing"},
                                                    {Method::Strip, "strip"},
                                                    {Method::Indicator, "indicator"},
                                                    {Method::TightLine, "tight_line"},
                                                    {Method::Dry, "dry"}}};

[[nodiscard]] constexpr std::string_view word_for(LineKind value) { return word_in(kLineKindWords, value); }
[[nodiscard]] constexpr std::string_view word_for(Method value) { return word_in(kMethodWords, value); }

}  // namespace floatwright
