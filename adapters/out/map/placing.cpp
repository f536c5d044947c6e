#include "adapters/out/map/placing.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "engine/river/straight_line.hpp"

namespace floatwright {
namespace {

GeoPoint on_the_line(const GeoPoint& a, const GeoPoint& b, double share) {
  const double longitude = std::remainder(a.longitude_deg + share * turn_east(a, b), 360.0);
  return {a.latitude_deg + share * (b.latitude_deg - a.latitude_deg), longitude};
}

Length apart(RiverPlace a, RiverPlace b) { return metres(std::abs(in_metres(a - b))); }

}  // namespace

bool on_earth(const GeoPoint& point) {  // a NaN compares false
  return std::abs(point.latitude_deg) <= 90.0 && std::abs(point.longitude_deg) <= 180.0;
}

Length off_by_at_most(Length up, Length down, Length straight) {
  const double a = in_metres(up), b = in_metres(down), d = in_metres(straight);  // m
  if (a + b <= 0.0) return Length{};
  return metres(std::sqrt(std::max(0.0, a * b * (1.0 - std::pow(d / (a + b), 2)))));
}

std::vector<Access> known_points(const River& river) {
  std::vector<Access> known;
  std::copy_if(river.accesses.begin(), river.accesses.end(), std::back_inserter(known),
               [](const Access& access) { return access.at && on_earth(*access.at); });
  std::stable_sort(known.begin(), known.end(), [](const Access& a, const Access& b) { return a.place < b.place; });
  return known;
}

std::optional<Placed> placed_between(const std::vector<Access>& known, RiverPlace place) {
  const auto above = std::find_if(known.begin(), known.end(), [&](const Access& a) { return a.place >= place; });
  if (above == known.end()) return std::nullopt;
  const bool at_access = above->place == place;
  if (!at_access && above == known.begin()) return std::nullopt;
  const Access& lower = at_access ? *above : *std::prev(above);
  const Length up = apart(lower.place, place), down = apart(above->place, place);
  const double share = at_access ? 0.0 : up / (up + down);
  return Placed{on_the_line(*lower.at, *above->at, share), above->name, lower.name,
                off_by_at_most(up, down, straight_line(*lower.at, *above->at))};
}

}  // namespace floatwright
