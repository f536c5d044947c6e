#pragma once
// Casts that are swung or stripped, by the simulated chain: one rig, fished several ways in several waters at once.
// Where the cast is laid and what the angler does with it is judgement; the line's way from there is not.
#include <span>

#include "engine/sinking/cast_path.hpp"
#include "engine/sinking/chain.hpp"

namespace floatwright {

struct PulledSetting {
  Length cast;
  const DriftLimits& limits;
  std::span<const WaterAndBoat> places;  // of one temperature
};

// By place, then by technique; techniques of one method, swing or strip. Absent where the fly has no mass, a length is
// missing, the cast is no longer than what stays out, or a strip has no speed.
[[nodiscard]] std::vector<std::vector<Measured<CastPath>>> pulled_casts(const Tackle& tackle, const Rig& rig,
                                                                        std::span<const Technique> techniques,
                                                                        const PulledSetting& setting);

// The cast as it is laid and handled, for one place; the setting's one method and technique.
[[nodiscard]] Measured<CastCase> pulled_case(const Tackle& tackle, const Rig& rig, const Technique& technique,
                                             Length cast, const WaterAndBoat& place);

// How finely such casts are simulated: longer steps where the water is slow.
[[nodiscard]] Resolution pulled_resolution(std::span<const WaterAndBoat> places);

}  // namespace floatwright
