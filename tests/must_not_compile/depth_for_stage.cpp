// A gauge's stage stands over the gauge's own zero: it is not a depth.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr double kRight = in_feet(stage_feet(4.0) - stage_feet(3.0));
#ifdef FLOATWRIGHT_WRONG
constexpr Length kWrong = stage_feet(4.0);
#endif

}  // namespace floatwright
