#pragma once
// The named makers and readers of quantities: the one place where feet, cfs, grains, in/s and F are turned into SI.
// Factors are exact by definition: international foot and pound, NIST SP 811 Appendix B.
#include <numbers>

#include "engine/units/quantity.hpp"
#include "engine/units/temperature.hpp"

namespace floatwright {

inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kMetresPerMile = 1609.344;
inline constexpr double kSquareMetresPerSquareMile = 2589988.110336;
inline constexpr double kCubicMetresPerCubicFoot = 0.028316846592;
inline constexpr double kKilogramsPerGrain = 6.479891e-5;
inline constexpr double kKilogramsPerPound = 0.45359237;
inline constexpr double kStandardGravity = 9.80665;  // m/s2

// clang-format off
constexpr Length metres(double v) { return Length::from_si(v); }
constexpr Length feet(double v) { return Length::from_si(v * kMetresPerFoot); }
constexpr Length inches(double v) { return Length::from_si(v * kMetresPerInch); }
constexpr Length millimetres(double v) { return Length::from_si(v / 1000.0); }
constexpr Length miles(double v) { return Length::from_si(v * kMetresPerMile); }
constexpr Length kilometres(double v) { return Length::from_si(v * 1000.0); }
constexpr double in_metres(Length q) { return q.si(); }
constexpr double in_feet(Length q) { return q.si() / kMetresPerFoot; }
constexpr double in_inches(Length q) { return q.si() / kMetresPerInch; }
constexpr double in_millimetres(Length q) { return q.si() * 1000.0; }
constexpr double in_miles(Length q) { return q.si() / kMetresPerMile; }
constexpr double in_kilometres(Length q) { return q.si() / 1000.0; }

constexpr RiverPlace river_mile(double v) { return RiverPlace::from_si(v * kMetresPerMile); }
constexpr RiverPlace river_kilometre(double v) { return RiverPlace::from_si(v * 1000.0); }
constexpr double in_river_miles(RiverPlace q) { return q.si() / kMetresPerMile; }
constexpr double in_river_kilometres(RiverPlace q) { return q.si() / 1000.0; }

constexpr Stage stage_metres(double v) { return Stage::from_si(v); }
constexpr Stage stage_feet(double v) { return Stage::from_si(v * kMetresPerFoot); }
constexpr double in_metres(Stage q) { return q.si(); }
constexpr double in_feet(Stage q) { return q.si() / kMetresPerFoot; }

constexpr Area square_metres(double v) { return Area::from_si(v); }
constexpr Area square_miles(double v) { return Area::from_si(v * kSquareMetresPerSquareMile); }
constexpr Area square_kilometres(double v) { return Area::from_si(v * 1e6); }
constexpr double in_square_metres(Area q) { return q.si(); }
constexpr double in_square_miles(Area q) { return q.si() / kSquareMetresPerSquareMile; }

constexpr Duration seconds(double v) { return Duration::from_si(v); }
constexpr Duration minutes(double v) { return Duration::from_si(v * 60.0); }
constexpr Duration hours(double v) { return Duration::from_si(v * 3600.0); }
constexpr double in_seconds(Duration q) { return q.si(); }
constexpr double in_minutes(Duration q) { return q.si() / 60.0; }
constexpr double in_hours(Duration q) { return q.si() / 3600.0; }

constexpr Speed metres_per_second(double v) { return Speed::from_si(v); }
constexpr Speed feet_per_second(double v) { return Speed::from_si(v * kMetresPerFoot); }
constexpr Speed inches_per_second(double v) { return Speed::from_si(v * kMetresPerInch); }
constexpr Speed miles_per_hour(double v) { return Speed::from_si(v * kMetresPerMile / 3600.0); }
constexpr Speed kilometres_per_hour(double v) { return Speed::from_si(v / 3.6); }
constexpr double in_metres_per_second(Speed q) { return q.si(); }
constexpr double in_feet_per_second(Speed q) { return q.si() / kMetresPerFoot; }
constexpr double in_inches_per_second(Speed q) { return q.si() / kMetresPerInch; }
constexpr double in_miles_per_hour(Speed q) { return q.si() * 3600.0 / kMetresPerMile; }

constexpr SurfaceSpeed surface_metres_per_second(double v) { return SurfaceSpeed::from_si(v); }
constexpr SurfaceSpeed surface_feet_per_second(double v) { return SurfaceSpeed::from_si(v * kMetresPerFoot); }
constexpr MeanSpeed mean_metres_per_second(double v) { return MeanSpeed::from_si(v); }
constexpr MeanSpeed mean_feet_per_second(double v) { return MeanSpeed::from_si(v * kMetresPerFoot); }
constexpr double in_metres_per_second(SurfaceSpeed q) { return q.si(); }
constexpr double in_metres_per_second(MeanSpeed q) { return q.si(); }
constexpr double in_feet_per_second(SurfaceSpeed q) { return q.si() / kMetresPerFoot; }
constexpr double in_feet_per_second(MeanSpeed q) { return q.si() / kMetresPerFoot; }

constexpr Discharge cubic_metres_per_second(double v) { return Discharge::from_si(v); }
constexpr Discharge cubic_feet_per_second(double v) { return Discharge::from_si(v * kCubicMetresPerCubicFoot); }
constexpr double in_cubic_metres_per_second(Discharge q) { return q.si(); }
constexpr double in_cubic_feet_per_second(Discharge q) { return q.si() / kCubicMetresPerCubicFoot; }

constexpr Mass kilograms(double v) { return Mass::from_si(v); }
constexpr Mass grams(double v) { return Mass::from_si(v / 1000.0); }
constexpr Mass grains(double v) { return Mass::from_si(v * kKilogramsPerGrain); }
constexpr double in_kilograms(Mass q) { return q.si(); }
constexpr double in_grams(Mass q) { return q.si() * 1000.0; }
constexpr double in_grains(Mass q) { return q.si() / kKilogramsPerGrain; }

constexpr LinearDensity kilograms_per_metre(double v) { return LinearDensity::from_si(v); }
constexpr LinearDensity grains_per_foot(double v) { return LinearDensity::from_si(v * kKilogramsPerGrain / kMetresPerFoot); }
constexpr double in_kilograms_per_metre(LinearDensity q) { return q.si(); }
constexpr double in_grains_per_foot(LinearDensity q) { return q.si() * kMetresPerFoot / kKilogramsPerGrain; }

constexpr Density kilograms_per_cubic_metre(double v) { return Density::from_si(v); }
constexpr double in_kilograms_per_cubic_metre(Density q) { return q.si(); }

constexpr Force newtons(double v) { return Force::from_si(v); }
constexpr double in_newtons(Force q) { return q.si(); }

constexpr Turbidity fnu(double v) { return Turbidity::from_si(v); }
constexpr double in_fnu(Turbidity q) { return q.si(); }

constexpr Angle radians(double v) { return Angle::from_si(v); }
constexpr Angle degrees(double v) { return Angle::from_si(v * std::numbers::pi / 180.0); }
constexpr double in_radians(Angle q) { return q.si(); }
constexpr double in_degrees(Angle q) { return q.si() * 180.0 / std::numbers::pi; }
// clang-format on

}  // namespace floatwright
