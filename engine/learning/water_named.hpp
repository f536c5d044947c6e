#pragma once
// Which water of the river file a person means by a place and a kind of water: "Mill run", "Cottonwood Bend run",
// "mile 39.5 bank", "below Old Ferry pool".
#include <string>
#include <vector>

#include "engine/river/graph.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

enum class WaterHolder { Spot, NamedReach, StretchNote };

struct NamedWater {
  WaterHolder holder = WaterHolder::NamedReach;
  std::size_t of = 0;     // index into River::spots, reaches or notes
  std::size_t water = 0;  // index into its waters
  std::size_t reach = 0;  // graph reach whose channel and flow it has
  RiverPlace place{};
  std::string name;  // the place's
};

// The kind may stand behind the place or be given; it may be left out where the place has one water, or is called after one
// of them ("Mill run"). Names and ids as written, else whatever their capitals. The name of an access, or "below" and a
// name, is the water just downstream of it. Absent with a phrase that says what is not known or not clear.
[[nodiscard]] Measured<NamedWater> water_named(const River& river, const RiverGraph& graph, const std::string& where,
                                               std::optional<WaterType> kind = std::nullopt);

// Of spots, named reaches and accesses: what may stand in `where`.
[[nodiscard]] std::vector<std::string> names_of_waters(const River& river);

[[nodiscard]] const std::vector<Water>& waters_of(const River& river, WaterHolder holder, std::size_t of);

}  // namespace floatwright
