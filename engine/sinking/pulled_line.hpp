#pragma once
// A line that is swung or stripped, as the stream and the rod pull at it: how fast it moves when tight, what stream is
// left past it, and how deep it then settles.
#include "engine/sinking/rigged_line.hpp"
#include "engine/sinking/swing_course.hpp"
#include "engine/sinking/tabled_water.hpp"
#include "engine/sinking/upward_line.hpp"

namespace floatwright {

struct PulledLine {
  RiggedLine line;
  HungWeight hung;
  const TabledWater* water;
  UpwardLine upward;
  Speed boat, past;  // of the boat over the ground; of the surface past the boat, below 0 where the boat is faster
  Speed tip_rate;    // of the sinking part, 0 without one
  Length takes_its_angle;  // the part that does
  bool whole_line;
};

// Absent where the fly has no mass, or a length is missing.
[[nodiscard]] Measured<PulledLine> pulled_line(const Tackle& tackle, const Rig& rig, Method method,
                                               const CastSetting& setting);

// The tight line's velocity over the ground: led round by its belly, drawn in by the strip.
[[nodiscard]] LineVelocity tight_velocity(const PulledLine& line, const Moment& at);
// Of the surface water past a tight line.
[[nodiscard]] Speed relative_speed(const PulledLine& line, const Moment& at);

}  // namespace floatwright
