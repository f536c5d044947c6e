#pragma once
// One water as the boat meets it at one instant: what is printed of it and what the choice of line is asked.
#include "engine/trip/day_plan.hpp"
#include "engine/trip/passages.hpp"

namespace floatwright {

struct MetWater {
  PlannedWater printed;                 // without its choice
  Measured<WaterToFish> to_fish;        // Absent: why nothing can be chosen for it
};

[[nodiscard]] MetWater met_water(const RiverDay& day, const Passage& passage, const Water& water, Instant t);

// Depth and speed of the water at that instant, or why they are unknown.
[[nodiscard]] Measured<Lane> lane_at(const RiverDay& day, const Passage& passage, const Water& water, Instant t);

// A rise meets whoever is there at that instant: nobody is told to stand in it or to anchor.
[[nodiscard]] bool may_come_up(const RiverDay& day, const Passage& passage, Instant t);

// The same water at another flow of the whole river, all else as at that instant; none where the notes do not bear it.
[[nodiscard]] std::optional<WaterToFish> water_at_flow(const RiverDay& day, const Passage& passage, const Water& water,
                                                       Instant t, Discharge whole);

// The listed hatches of that instant, but those whose least temperature is not known to be reached.
[[nodiscard]] std::vector<const Hatch*> hatches_at(const RiverDay& day, std::size_t reach, Instant t);

inline constexpr Period kClarityHolds = std::chrono::hours{24};  // an older turbidity says nothing of today's water

// Turbidity for a place: what was typed that morning, else the newest reading of the nearest gauge that has a sensor.
[[nodiscard]] Measured<Turbidity> clarity_near(const RiverDay& day, RiverPlace place);

}  // namespace floatwright
