#pragma once
// The day's map as GeoJSON (RFC 7946): a FeatureCollection of points, longitude before latitude, WGS 84. A point whose
// place is not known has the geometry null, so that it is not lost; one placed by river miles says `approximate`.
#include <string>
#include <vector>

#include "engine/plan_day.hpp"

namespace floatwright {

// At least one boat; all of one river and day.
[[nodiscard]] std::string plan_geojson(const std::vector<BoatDay>& boats);
[[nodiscard]] std::string plan_geojson(const DayPlan& plan, const DayInputs& in);

}  // namespace floatwright
