#pragma once
// A stretch with its hours and limits becomes a planned one: each reach as met, the rods aboard, a choice for each water,
// what its fishing is worth, and its cautions.
#include "engine/trip/do_each.hpp"
#include "engine/trip/stretches.hpp"
#include "engine/trip/water_book.hpp"

namespace floatwright {

[[nodiscard]] PlannedStretch planned_stretch(const RiverDay& day, WaterBook& book, Scored how, const Stretch& stretch);

// What is fished on a stretch, with every rig scored, for sharing rods out before the stretch is planned.
[[nodiscard]] std::vector<WaterMinutes> waters_fished(const RiverDay& day, WaterBook& book, const Stretch& stretch);

// The flows at which each water's choice would change: dear, so only for the stretch recommended.
void add_changes(const RiverDay& day, WaterBook& book, const Stretch& stretch, PlannedStretch& planned,
                 const DoEach& do_each);

}  // namespace floatwright
