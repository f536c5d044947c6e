#pragma once
// What a river may be doing at a gauge, and the ways in which its flow is carried ahead.
#include "engine/units/words.hpp"

namespace floatwright {

enum class FlowState { Unknown, Ice, Regulated, DailyWave, Rising, Falling, Steady };
// Official: an agency's forecast, set to the gauge. FromAbove: what a gauge above has shown, brought down. Tuned: limb
// regression and analogue, fitted to the gauge's own record.
enum class FlowMethod { None, Official, FromAbove, Tuned, Schedule, SameHour, WaveShape, Hold, FadingFall };

// The words of files and JSON.
inline constexpr WordTable<FlowState, 7> kFlowStateWords{{{FlowState::Unknown, "unknown"},
                                                          {FlowState::Ice, "ice"},
                                                          {FlowState::Regulated, "regulated"},
                                                          {FlowState::DailyWave, "daily_wave"},
                                                          {FlowState::Rising, "rising"},
                                                          {FlowState::Falling, "falling"},
                                                          {FlowState::Steady, "steady"}}};

}  // namespace floatwright
