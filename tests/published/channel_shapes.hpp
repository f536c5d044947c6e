#pragma once
// Regular sections as the books draw them, as surveyed points.
#include "engine/water/surveyed_section.hpp"

namespace floatwright {

// Bottom width, side slope (horizontal to vertical; 0: walls) and height of the banks.
inline SurveyedSection trapezoid(Length bottom, double side, Length high, std::optional<double> roughness) {
  const Length out = side * high;
  return {{{Length{}, high}, {out, Length{}}, {out + bottom, Length{}}, {out + bottom + out, high}}, {}, roughness};
}

inline double normal_depth_m(const SurveyedSection& section, double slope, Discharge flow) {
  return in_metres(surface_at(section, slope, flow).value() - lowest_ground(section));
}

}  // namespace floatwright
