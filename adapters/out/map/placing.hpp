#pragma once
// Where on the map a place of the river lies, as well as the accesses tell it: those with coordinates are known points,
// every other place lies between two of them, in the proportion of the river miles. A river winds, so the true place may
// be elsewhere; how far at most follows from the miles alone (`off_by_at_most`).
#include <optional>
#include <string>
#include <vector>

#include "engine/river/river.hpp"
#include "engine/units/unit.hpp"

namespace floatwright {

struct Placed {
  GeoPoint at;
  std::string from, to;           // names of the accesses it was placed between
  Length off_by_at_most;          // nothing said of errors in the typed miles or coordinates themselves
};

// Not beyond the poles or the 180th meridian; a number that is none is nowhere.
[[nodiscard]] bool on_earth(const GeoPoint& point);

// The accesses that have usable coordinates, in the order of their places.
[[nodiscard]] std::vector<Access> known_points(const River& river);

// None above the first and below the last known point. `known` as known_points gives them.
[[nodiscard]] std::optional<Placed> placed_between(const std::vector<Access>& known, RiverPlace place);

// A point `up` of river from one known point and `down` from another, `straight` apart on the map, lies no farther than
// this from the point that parts the straight line as the river is parted: sqrt(up down (1 - (straight/(up+down))^2)).
// (Stewart's theorem: neither leg of the river is shorter than the straight line along it.) Zero for a straight river.
[[nodiscard]] Length off_by_at_most(Length up, Length down, Length straight);

}  // namespace floatwright
