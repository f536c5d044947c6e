// Drainage area along the stem, from what is known at gauges and of tributaries.
#include <algorithm>
#include <cmath>

#include "engine/river/reaches.hpp"

namespace floatwright {
namespace {

struct KnownArea {
  RiverPlace place;
  Area area;
};

std::vector<KnownArea> known_areas(const River& river) {
  std::vector<KnownArea> known;
  for (const auto& gauge : river.gauges) {
    if (gauge.place && gauge.drainage_area) known.push_back({*gauge.place, *gauge.drainage_area});
  }
  std::ranges::sort(known, [](const KnownArea& a, const KnownArea& b) { return a.place > b.place; });
  return known;
}

// A tributary's own area, else that of the gauge on it.
Area area_of(const River& river, const Tributary& tributary) {
  if (tributary.drainage_area) return *tributary.drainage_area;
  for (const auto& gauge : river.gauges) {
    if (!tributary.gauge.empty() && gauge.id == tributary.gauge && gauge.drainage_area) return *gauge.drainage_area;
  }
  return Area{};
}

// What the tributaries bring that join from `upper` (included) down to `lower` (not included).
Area brought_in(const River& river, RiverPlace upper, RiverPlace lower) {
  Area sum;
  for (const auto& tributary : river.tributaries) {
    if (tributary.joins_at <= upper && tributary.joins_at > lower) sum = sum + area_of(river, tributary);
  }
  return sum;
}

// m2 of hillside per m of river between two gauges, tributaries taken out; never negative.
double gain_per_metre(const River& river, const KnownArea& upper, const KnownArea& lower) {
  const Area gain = lower.area - upper.area - brought_in(river, upper.place, lower.place);
  return std::max(0.0, gain / (upper.place - lower.place) / metres(1.0));
}

Area area_at(const River& river, const std::vector<KnownArea>& known, RiverPlace place) {
  // The pair of gauges that the place lies between, else the nearest pair.
  std::size_t lower = 1;
  while (lower + 1 < known.size() && known[lower].place > place) ++lower;
  const KnownArea& a = known[lower - 1];
  const KnownArea& b = known[lower];
  const auto hillside = [rate = gain_per_metre(river, a, b)](Length l) { return square_metres(rate * in_metres(l)); };

  if (place > a.place) {
    return std::max(Area{}, a.area - hillside(place - a.place) - brought_in(river, place, a.place));
  }
  if (place >= b.place) return a.area + hillside(a.place - place) + brought_in(river, a.place, place);
  return b.area + hillside(b.place - place) + brought_in(river, b.place, place);
}

}  // namespace

void fill_drainage_areas(const River& river, std::vector<Reach>& pieces) {
  const auto known = known_areas(river);
  for (auto& piece : pieces) {
    if (!piece.main_thread) continue;
    if (piece.gauge_at_end) piece.drainage_area = river.gauges[*piece.gauge_at_end].drainage_area;
    if (!piece.drainage_area && known.size() >= 2) piece.drainage_area = area_at(river, known, piece.to);
  }
}

}  // namespace floatwright
