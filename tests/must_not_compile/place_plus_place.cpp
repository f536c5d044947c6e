// Two places on a river have a distance, not a sum.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr RiverPlace kRight = upstream_of(river_mile(4.0), miles(1.0));
#ifdef FLOATWRIGHT_WRONG
constexpr auto kWrong = river_mile(4.0) + river_mile(1.0);
#endif

}  // namespace floatwright
