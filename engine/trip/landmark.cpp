#include "engine/trip/landmark.hpp"

#include <algorithm>
#include <tuple>
#include <vector>

#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

enum class Kind { Access, ReachEnd, Portage, Mouth };

struct Landmark {
  RiverPlace place;
  Kind kind;
  std::string name;
};

std::vector<Landmark> landmarks(const River& river) {
  std::vector<Landmark> all;
  for (const Access& access : river.accesses)
    all.push_back({access.place, Kind::Access, access.name.empty() ? access.id : access.name});
  for (const NamedReach& reach : river.reaches)
    if (reach.in_side_channel.empty()) all.push_back({reach.to, Kind::ReachEnd, reach.name});
  for (const Hazard& hazard : river.hazards)
    if (hazard.must_portage) all.push_back({hazard.place, Kind::Portage, hazard.what});
  for (const Tributary& tributary : river.tributaries) all.push_back({tributary.joins_at, Kind::Mouth, tributary.name});
  return all;
}

}  // namespace

std::string landmark_above(const River& river, RiverPlace place) {
  std::vector<Landmark> above = landmarks(river);
  std::erase_if(above, [&](const Landmark& mark) {
    return mark.name.empty() || (mark.place < place && !same_place(mark.place, place));
  });
  if (above.empty()) return "";
  const RiverPlace nearest = std::min_element(above.begin(), above.end(), [](const auto& a, const auto& b) {
                               return a.place < b.place;
                             })->place;
  std::erase_if(above, [&](const Landmark& mark) { return !same_place(mark.place, nearest); });
  return std::min_element(
             above.begin(), above.end(),
             [](const Landmark& a, const Landmark& b) { return std::tie(a.kind, a.name) < std::tie(b.kind, b.name); })
      ->name;
}

}  // namespace floatwright
