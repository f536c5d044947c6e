#pragma once
// One section of line: how its diameter, weight and still-water sink rate hang together. A level line sinks at the rate
// at which the drag of a cylinder balances its weight in water: (rho_s - rho) g pi d^2/4 = 1/2 rho Cd d Vs^2.
#include "engine/sinking/cylinder_drag.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

// Weight in water per length that sinks at `rate`; a rate below 0 is a line that rises.
[[nodiscard]] ForcePerLength weight_for_rate(Speed rate, Length diameter, const WaterProperties& water);
// Weight in water per length of a given density; below 0 for a line that floats.
[[nodiscard]] ForcePerLength weight_for_density(Density density, Length diameter, const WaterProperties& water);

// Still-water sink rate, below 0 for a line that rises. Absent for a section of no diameter.
[[nodiscard]] Measured<Speed> sink_rate(Density density, Length diameter, const WaterProperties& water);
// The expert's way: weighed (grains per foot) and measured across.
[[nodiscard]] Measured<Speed> sink_rate(LinearDensity mass, Length diameter, const WaterProperties& water);

struct Section {
  Length diameter;
  Density density;
  bool optimistic = false;  // density over 4,000 kg/m3: the nominal rate is more than such a line can do
};
// The diameter at which a line of this mass per length sinks at this rate. One root: weight in water falls with the
// diameter and drag grows. Absent where mass or rate is not above 0.
[[nodiscard]] Measured<Section> section_for(LinearDensity mass, Speed rate, const WaterProperties& water);

}  // namespace floatwright
