#include "engine/trip/landmark.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>
#include <vector>

#include "engine/river/stations.hpp"

namespace floatwright {
namespace {

enum class Kind { Access, ReachEnd, Portage, Mouth };

struct Landmark {
  RiverPlace place;
  Kind kind;
  std::string_view name;  // in the river
};

// Asked of every row of every stretch that is looked at, so nothing is copied.
std::vector<Landmark> landmarks_above(const River& river, RiverPlace from) {
  std::vector<Landmark> above;
  const auto add = [&](RiverPlace place, Kind kind, std::string_view name) {
    if (!name.empty() && (place >= from || same_place(place, from))) above.push_back({place, kind, name});
  };
  for (const Access& access : river.accesses)
    add(access.place, Kind::Access, access.name.empty() ? std::string_view(access.id) : std::string_view(access.name));
  for (const NamedReach& reach : river.reaches)
    if (reach.in_side_channel.empty()) add(reach.to, Kind::ReachEnd, reach.name);
  for (const Hazard& hazard : river.hazards)
    if (hazard.must_portage) add(hazard.place, Kind::Portage, hazard.what);
  for (const Tributary& tributary : river.tributaries) add(tributary.joins_at, Kind::Mouth, tributary.name);
  return above;
}

}  // namespace

std::string landmark_above(const River& river, RiverPlace place) {
  std::vector<Landmark> above = landmarks_above(river, place);
  if (above.empty()) return "";
  const RiverPlace nearest = std::min_element(above.begin(), above.end(), [](const auto& a, const auto& b) {
                               return a.place < b.place;
                             })->place;
  std::erase_if(above, [&](const Landmark& mark) { return !same_place(mark.place, nearest); });
  return std::string(
      std::min_element(above.begin(), above.end(), [](const Landmark& a, const Landmark& b) {
        return std::tie(a.kind, a.name) < std::tie(b.kind, b.name);
      })->name);
}

}  // namespace floatwright
