#pragma once
// The rods of one float, read off its reaches in order: what each carries at launch, and every change of rig with its
// hour and place. A is the rod that is taken up first.
#include <optional>
#include <string>
#include <vector>

#include "engine/trip/day_plan.hpp"

namespace floatwright {

struct RodInBoat {
  std::size_t rod = 0;  // into Tackle::rods
  std::string letter;
  std::optional<Rig> at_launch;
  std::optional<ScoredRig> as_fished;         // the launch rig where it is first fished: gives leader and method
  const PlannedReach* first_reach = nullptr;  // where that is, in the stretch it was read from
};
struct RigChange {
  std::size_t in_boat = 0;  // into RodsOfTheDay::rods
  Instant at{};
  const PlannedReach* reach = nullptr;  // where, in the stretch it was read from
  Rig before;
  ScoredRig to;
};
struct RodsOfTheDay {
  std::vector<RodInBoat> rods;
  std::vector<RigChange> changes;
  bool marks_tell = true;  // every rod has a mark of its own; else letters do
};

[[nodiscard]] RodsOfTheDay rods_of_the_day(const PlannedStretch& stretch, const Tackle& tackle);

// Index into RodsOfTheDay::rods of the rod that a rig is fished on; none when it is not in the boat.
[[nodiscard]] std::optional<std::size_t> in_boat(const RodsOfTheDay& rods, const Tackle& tackle, const Rig& rig);

}  // namespace floatwright
