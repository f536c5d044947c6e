#include "engine/routing/area_ratio.hpp"

#include <fmt/core.h>

#include <cmath>

namespace floatwright {

Measured<AreaRatio> area_ratio(Area here, Area at_gauge, double exponent) {
  if (!(here > Area{}) || !(at_gauge > Area{})) return Absent{"a drainage area that is not above zero"};
  const double areas = here / at_gauge;
  if (areas < 0.3 || areas > 3.0)
    return Absent{fmt::format("drains {:.2g} times what the gauge does, too far from it to be told by area", areas)};
  return AreaRatio{areas, std::pow(areas, exponent), areas < 0.5 || areas > 1.5};
}

}  // namespace floatwright
