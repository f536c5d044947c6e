#pragma once
// The one fly depth at which a line's upper end comes out at the surface. In an even stream the end is always the same
// height over the fly, so that the first correction is right; a sheared one takes a few shots, until what the last
// correction leaves is some ten-thousandths of the depth. Of a shot that ends within a tolerance, where one is given,
// the rest is corrected and not shot again.
#include "engine/sinking/upward_line.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct Settled {
  Length fly_depth, tip_depth;
  Length line;    // that it takes from the fly to the surface; more of it out changes nothing where it ends level
  Force carried;  // by the surface under a fly that floats, else 0
};

// `out`: of the line from the fly up. Absent where no depth brings the end to the surface. A fly that its line lets up
// to the surface lies on it.
[[nodiscard]] Measured<Settled> settle(const UpwardLine& line, const LineVelocity& velocity, Length out, Length guess,
                                       Length tolerance = {});

// The same with the last shot, traced; its points held to the surface at one end and the fly's depth at the other.
struct SettledShot {
  Settled settled;
  Shot shot;
};
[[nodiscard]] Measured<SettledShot> settled_shot(const UpwardLine& line, const LineVelocity& velocity, Length out,
                                                 Length guess);

}  // namespace floatwright
