// Lengths add to lengths.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr Length kRight = metres(1.0) + feet(1.0);
#ifdef FLOATWRIGHT_WRONG
constexpr auto kWrong = metres(1.0) + seconds(1.0);
#endif

}  // namespace floatwright
