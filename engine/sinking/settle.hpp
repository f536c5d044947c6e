#pragma once
// The one fly depth at which a line's upper end comes out at the surface. In an even stream the end is always the same
// height over the fly, so that the first correction is right; a sheared one takes three to five shots.
#include "engine/sinking/upward_line.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct Settled {
  Length fly_depth;
  Force carried;  // by the surface under a fly that floats, else 0
  Shot shot;
};

// Absent where no depth brings the end to the surface. A fly that its line lets up to the surface lies on it.
[[nodiscard]] Measured<Settled> settle(const UpwardLine& line, const LineVelocity& velocity, Length guess,
                                       Length tolerance = millimetres(0.02));

}  // namespace floatwright
