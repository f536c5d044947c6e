#pragma once
// Flow where no gauge stands, from a gauge whose drainage area is near: Qu = Qg (Au/Ag)^phi. Refused where Au/Ag is
// outside 0.3 to 3, in doubt outside 0.5 to 1.5 (commonly quoted as guidance of the US Geological Survey).
#include "engine/units/measured.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct AreaRatio {
  double areas = 1.0;   // Au/Ag
  double factor = 1.0;  // (Au/Ag)^phi
  bool in_doubt = false;
};

[[nodiscard]] Measured<AreaRatio> area_ratio(Area here, Area at_gauge, double exponent);

}  // namespace floatwright
