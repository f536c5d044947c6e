#pragma once
// How much of a line the fast water at the surface has hold of: of the drag that the stream would put on the line if it
// lay across it at the depths at which it fishes, the share that acts in the upper fifth of the water's depth. Leader,
// sinking part and body count, the fly does not; a body on the surface counts half its thickness. A heavy fly on a
// floating line is deep and yet held by the surface; a tip puts part of its line under it; a full sinking line most.
#include "engine/sinking/line_shape.hpp"

namespace floatwright {

inline constexpr double kFastLayer =
    0.2;  // share of the depth; judgement: above it the stream is near its surface speed

// Absent in water that does not move past the line. `shape` is that of the rig in `setting`
// (engine/sinking/line_shape.hpp).
[[nodiscard]] Measured<double> surface_hold(const Tackle& tackle, const Rig& rig, Method method,
                                            const CastSetting& setting, const LineShape& shape);

}  // namespace floatwright
