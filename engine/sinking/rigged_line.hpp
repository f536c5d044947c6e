#pragma once
// A rig as the water meets it: parts of line from the fly up, and the fly's weight and drag.
// Judgement: a fly weighs 0.6 of its mass in water, shot 0.91 of it and sinks 1.1 m/s; a towed fly's drag area is a
// quarter of the broadside one that its sink rate implies; a floating body has the standard's mass per foot and 870
// kg/m3.
#include <optional>
#include <vector>

#include "engine/sinking/cast_path.hpp"
#include "engine/sinking/steady.hpp"
#include "engine/sinking/water_properties.hpp"

namespace floatwright {

// What hangs on the leader's end, shot counted at the fly.
struct HungWeight {
  TowedFly towed;
  Area broadside;  // CdA that its sink rate implies
};
// Absent where the fly has no mass or no sink rate; `towed.sink_rate` is of fly and shot together.
[[nodiscard]] Measured<HungWeight> hung_weight(const FlyClass& fly, Mass shot, const WaterProperties& water);

struct RiggedLine {
  LinePart leader;
  std::optional<LinePart> sinking;
  std::optional<LinePart> floating;  // none on a full sinking line
  Length least_out;                  // stripping ends here: 2 m, or the looped tip and 2 m
  bool rate_is_optimistic = false;   // the nominal sink rate is more than a line of the given weight can do
};
// All of a line that may lie between fly and rod tip, the cast's length in all. Absent where a length is missing.
[[nodiscard]] Measured<RiggedLine> rigged_line(const Tackle& tackle, const Rig& rig, Method method, Length cast);

// The parts with `out` of line between fly and rod tip; the body, then the sinking part, then the leader come in.
[[nodiscard]] std::vector<LinePart> parts_out(const RiggedLine& line, Length out);

// The owner's usual leader, else 1.0 m behind a sinking part, 2.0 m full sinking, 2.7 m floating, 3.0 m for a dry fly.
[[nodiscard]] Length leader_length(const Line& line, Method method);

}  // namespace floatwright
