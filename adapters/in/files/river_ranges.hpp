#pragma once
// What can be at all on a river: wide enough for any river on earth, narrow enough to catch a wrong unit or a slipped
// digit. Ours, no source.
#include "adapters/in/files/quantities.hpp"

namespace floatwright {

inline constexpr Range<Length> kAltitudes{metres(-430.0), metres(6000.0)};
inline constexpr Range<Length> kWaterDepths{metres(0.05), metres(60.0)};
inline constexpr Range<Length> kLakeDepths{metres(0.0), metres(1000.0)};
inline constexpr Range<Length> kWidths{metres(0.3), metres(20000.0)};
inline constexpr Range<Area> kDrainageAreas{square_kilometres(0.1), square_kilometres(1e7)};
inline constexpr Range<Discharge> kFlows{cubic_metres_per_second(0.0), cubic_metres_per_second(300000.0)};
inline constexpr Range<Discharge> kRunningFlows{cubic_metres_per_second(0.01), cubic_metres_per_second(300000.0)};
inline constexpr Range<SurfaceSpeed> kSurfaceSpeeds{surface_metres_per_second(0.0), surface_metres_per_second(9.0)};
inline constexpr Range<MeanSpeed> kMeanSpeeds{mean_metres_per_second(0.0), mean_metres_per_second(9.0)};
inline constexpr Range<Duration> kTripTimes{minutes(1.0), hours(240.0)};
inline constexpr double kSteepestSlope = 0.3;  // m per m; steeper is a fall
inline constexpr Range<Temperature> kWaterTemperatures{celsius(-1.0), celsius(45.0)};

}  // namespace floatwright
