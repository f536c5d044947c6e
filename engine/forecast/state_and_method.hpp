#pragma once
// What a river may be doing at a gauge, and the ways in which its flow is carried ahead.
#include "engine/units/words.hpp"

namespace floatwright {

// EdgingUp is told apart from Rising in daily means only.
enum class FlowState { Unknown, Ice, Regulated, DailyWave, Rising, EdgingUp, Falling, Steady };
// Official: an agency's forecast, set to the gauge. FromAbove: what a gauge above has shown, brought down. Tuned: limb
// regression and analogue, fitted to the gauge's own record. DailyMeans: from no more than the means of whole days.
// OfficialAlone: an agency's forecast of a gauge that is silent.
enum class FlowMethod {
  None, Official, FromAbove, Tuned, Schedule, SameHour, WaveShape, Hold, FadingFall, DailyMeans, OfficialAlone
};

// The words of files and JSON.
inline constexpr WordTable<FlowState, 8> kFlowStateWords{{{FlowState::Unknown, "unknown"},
                                                          {FlowState::Ice, "ice"},
                                                          {FlowState::Regulated, "regulated"},
                                                          {FlowState::DailyWave, "daily_wave"},
                                                          {FlowState::Rising, "rising"},
                                                          {FlowState::EdgingUp, "edging_up"},
                                                          {FlowState::Falling, "falling"},
                                                          {FlowState::Steady, "steady"}}};

}  // namespace floatwright
