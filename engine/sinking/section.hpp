#pragma once
// One section of line: how its diameter, weight and still-water sink rate hang together. A level line sinks at the rate
// at which the drag of a cylinder balances its weight in water: (rho_s - rho) g pi d^2/4 = 1/2 rho Cd d Vs^2.
#include <optional>

#include "engine/sinking/cylinder_drag.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

// Weight in water per length that sinks at `rate`; a rate below 0 is a line that rises.
[[nodiscard]] ForcePerLength weight_for_rate(Speed rate, Length diameter, const WaterProperties& water);
// Weight in water per length of a given density; below 0 for a line that floats.
[[nodiscard]] ForcePerLength weight_for_density(Density density, Length diameter, const WaterProperties& water);

// Still-water sink rate of a section with this weight in water, below 0 for a line that rises. Absent without a
// diameter.
[[nodiscard]] Measured<Speed> rate_for_weight(ForcePerLength weight, Length diameter, const WaterProperties& water);
// Still-water sink rate, below 0 for a line that rises. Absent for a section of no diameter.
[[nodiscard]] Measured<Speed> sink_rate(Density density, Length diameter, const WaterProperties& water);
// The expert's way: weighed (grains per foot) and measured across.
[[nodiscard]] Measured<Speed> sink_rate(LinearDensity mass, Length diameter, const WaterProperties& water);

inline constexpr Density kOptimisticDensity = kilograms_per_cubic_metre(4000.0);  // judgement: the trade's are below

struct Section {
  Length diameter;
  Density density;
  bool optimistic = false;  // density over 4,000 kg/m3: the nominal rate is more than such a line can do
};
// The diameter at which a line of this mass per length sinks at this rate. One root: weight in water falls with the
// diameter and drag grows. Absent where mass or rate is not above 0.
[[nodiscard]] Measured<Section> section_for(LinearDensity mass, Speed rate, const WaterProperties& water);

// How far the drag law may be off (judgement: 20 % in Cd, as far as published correlations are apart) in the rate of a
// section of this weight in water: about 12 % either way.
struct RateBand {
  Speed low, best, high;
};
[[nodiscard]] Measured<RateBand> rate_band(ForcePerLength weight, Length diameter, const WaterProperties& water);

// What a person knows of a sinking part. The nominal rate alone: the diameter is the usual one for it. With grains per
// foot: the diameter follows. Grains per foot and the measured diameter, the expert's way: the rate follows, and a
// nominal rate beside them is only judged.
struct KnownOfSection {
  std::optional<Speed> nominal_rate;
  std::optional<LinearDensity> mass;
  std::optional<Length> diameter;
};
struct SinkingSection {
  Section section;
  Speed rate;                    // to reckon with
  std::optional<RateBand> band;  // of a rate that follows from weight and diameter
  // The nominal rate is more than such a line can do: its density would be over 4,000 kg/m3, or weight and diameter
  // give a rate below it even with the least drag.
  bool optimistic = false;
};
// Absent, with the sentence, where too little is known, or where it cannot be.
[[nodiscard]] Measured<SinkingSection> sinking_section(const KnownOfSection& known, const WaterProperties& water);

}  // namespace floatwright
