// Miles against the map: the river between two accesses is at least as long as the straight line, and not ten times as
// long (the most winding rivers wind some four to five times; common practice, no source).
#include <algorithm>
#include <cmath>
#include <set>

#include "engine/river/place_text.hpp"
#include "engine/river/problem_groups.hpp"
#include "engine/river/straight_line.hpp"

namespace floatwright {
namespace {

constexpr double kMostWinding = 10.0;                 // river over straight line
constexpr Length kMapError = metres(500.0);           // of two typed points
constexpr Length kShortReach = metres(3000.0);        // beside which a loop may run far

Length along_the_river(const Access& a, const Access& b) { return metres(std::abs(in_metres(a.place - b.place))); }

bool disagree(const Access& a, const Access& b) {
  if (!a.at || !b.at) return false;
  const Length straight = straight_line(*a.at, *b.at), river = along_the_river(a, b);
  return straight > river * 1.02 + kMapError || river > straight * kMostWinding + kShortReach;
}

struct Suspect {
  std::size_t access, other, count;
};

// The access that disagrees with the most others, of those not yet set aside.
Suspect worst(const std::vector<Access>& accesses, const std::set<std::size_t>& aside) {
  Suspect most{0, 0, 0};
  for (std::size_t i = 0; i < accesses.size(); ++i) {
    if (aside.contains(i)) continue;
    Suspect here{i, 0, 0};
    for (std::size_t j = 0; j < accesses.size(); ++j) {
      if (j == i || aside.contains(j) || !disagree(accesses[i], accesses[j])) continue;
      if (here.count++ == 0) here.other = j;
    }
    if (here.count > most.count) most = here;
  }
  return most;
}

}  // namespace

Problems map_problems(const River& river) {
  Problems all;
  std::set<std::size_t> aside;
  for (Suspect s = worst(river.accesses, aside); s.count > 0; s = worst(river.accesses, aside)) {
    const Access& access = river.accesses[s.access];
    const Access& other = river.accesses[s.other];
    const auto told = [&](Length l) { return distance_text(river, l); };
    all.push_back(river_error(pointer_to("accesses", s.access),
                              called("access", access.id, s.access) + " at " + place_text(river, access.place) + ", " +
                                  told(along_the_river(access, other)) + " of river from " + called("access", other.id, s.other) +
                                  " and " + told(straight_line(*access.at, *other.at)) + " on the map",
                              "a river at least as long as the straight line and not ten times as long",
                              "Mend its mile, or its lat and lon."));
    aside.insert(s.access);
  }
  return all;
}

}  // namespace floatwright
