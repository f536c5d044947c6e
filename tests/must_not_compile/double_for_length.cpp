// A bare number has no unit.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr Length kRight = feet(4.0);
#ifdef FLOATWRIGHT_WRONG
constexpr Length kWrong = 4.0;
#endif

}  // namespace floatwright
