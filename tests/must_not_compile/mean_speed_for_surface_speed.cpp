// What a person sees on the surface is not the mean over the depth.
#include "engine/units/unit.hpp"

namespace floatwright {

constexpr SurfaceSpeed kRight = surface_feet_per_second(3.0);
#ifdef FLOATWRIGHT_WRONG
constexpr SurfaceSpeed kWrong = mean_feet_per_second(3.0);
#endif

}  // namespace floatwright
