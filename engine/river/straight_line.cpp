#include "engine/river/straight_line.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {
namespace {

constexpr double kEarthRadius = 6371008.8;  // m, mean

double rad(double deg) { return in_radians(degrees(deg)); }

}  // namespace

double turn_east(const GeoPoint& a, const GeoPoint& b) {
  return std::remainder(b.longitude_deg - a.longitude_deg, 360.0);
}

Length straight_line(const GeoPoint& a, const GeoPoint& b) {
  const double dlat = rad(b.latitude_deg - a.latitude_deg), dlon = rad(turn_east(a, b));
  const double h = std::pow(std::sin(dlat / 2), 2) +
                   std::cos(rad(a.latitude_deg)) * std::cos(rad(b.latitude_deg)) * std::pow(std::sin(dlon / 2), 2);
  return metres(2.0 * kEarthRadius * std::asin(std::min(1.0, std::sqrt(h))));
}

}  // namespace floatwright
