// Two temperatures differ by a change and have no sum.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr Temperature kRight = celsius(10.0) + kelvins(2.0);
#ifdef FLOATWRIGHT_WRONG
constexpr auto kWrong = celsius(10.0) + celsius(2.0);
#endif

}  // namespace floatwright
