// A day is computed in three cases side by side; they are never added up.
#include "engine/units/per_case.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr Length kRight = PerCase<Length>{}.low + PerCase<Length>{}.low;
#ifdef FLOATWRIGHT_WRONG
constexpr auto kWrong = PerCase<Length>{} + PerCase<Length>{};
#endif

}  // namespace floatwright
