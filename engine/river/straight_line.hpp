#pragma once
// How far apart two points of the map are, and which way round the earth.
#include "engine/river/river.hpp"

namespace floatwright {

// Longitude from a to b in degrees east, within -180 .. 180: the short way round, so that a river over the 180th
// meridian stays one river.
[[nodiscard]] double turn_east(const GeoPoint& a, const GeoPoint& b);

// Great circle on a sphere of the mean radius 6,371,008.8 m, by the haversine formula; at most 0.6 % from the ellipsoid.
[[nodiscard]] Length straight_line(const GeoPoint& a, const GeoPoint& b);

}  // namespace floatwright
