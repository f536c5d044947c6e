// Two stages differ by a length and have no sum.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr Length kRight = stage_feet(4.0) - stage_feet(1.0);
#ifdef FLOATWRIGHT_WRONG
constexpr auto kWrong = stage_feet(4.0) + stage_feet(1.0);
#endif

}  // namespace floatwright
