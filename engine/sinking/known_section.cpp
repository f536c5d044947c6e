// What a person knows of a sinking part, made into a section that can be reckoned with.
#include <numbers>

#include "engine/sinking/section.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {
namespace {

constexpr double kDragOff = 0.2;  // share of Cd; judgement

double area_of(Length diameter) { return std::numbers::pi * diameter.si() * diameter.si() / 4.0; }  // m2

Density density_of(LinearDensity mass, Length diameter) {
  return kilograms_per_cubic_metre(mass.si() / area_of(diameter));
}

// The density at which a section of this diameter sinks at a rate.
Density density_for(Speed rate, Length diameter, const WaterProperties& water) {
  const double surplus = weight_for_rate(rate, diameter, water).si() / (kStandardGravity * area_of(diameter));  // kg/m3
  return kilograms_per_cubic_metre(water.density.si() + surplus);
}

// Weighed and measured.
Measured<SinkingSection> measured_section(const KnownOfSection& known, const WaterProperties& water) {
  const Length diameter = *known.diameter;
  const Density density = density_of(*known.mass, diameter);
  const auto band = rate_band(weight_for_density(density, diameter, water), diameter, water);
  if (!band) return Absent{band.why_absent()};
  if (!(band->best > Speed{})) return Absent{"a line of this weight and diameter floats"};
  const bool optimistic = known.nominal_rate && *known.nominal_rate > band->high;
  return SinkingSection{{diameter, density, density > kOptimisticDensity}, band->best, *band, optimistic};
}

Measured<SinkingSection> nominal_section(const KnownOfSection& known, const WaterProperties& water) {
  const Speed rate = *known.nominal_rate;
  if (!(rate > Speed{})) return Absent{"the line's sink rate is not above 0"};
  if (known.mass) {
    const auto section = section_for(*known.mass, rate, water);
    if (!section) return Absent{section.why_absent()};
    return SinkingSection{*section, rate, std::nullopt, section->optimistic};
  }
  const Length diameter = known.diameter.value_or(default_diameter(rate));
  const Density density = density_for(rate, diameter, water);
  const bool optimistic = density > kOptimisticDensity;
  return SinkingSection{{diameter, density, optimistic}, rate, std::nullopt, optimistic};
}

}  // namespace

Measured<RateBand> rate_band(ForcePerLength weight, Length diameter, const WaterProperties& water) {
  // With more drag by a share a line sinks as one that much lighter.
  const auto low = rate_for_weight(weight / (1.0 + kDragOff), diameter, water);
  const auto best = rate_for_weight(weight, diameter, water);
  const auto high = rate_for_weight(weight / (1.0 - kDragOff), diameter, water);
  if (!best || !low || !high) return Absent{!best ? best.why_absent() : !low ? low.why_absent() : high.why_absent()};
  return RateBand{*low, *best, *high};
}

Measured<SinkingSection> sinking_section(const KnownOfSection& known, const WaterProperties& water) {
  if (known.diameter && !(*known.diameter > Length{})) return Absent{"the section has no diameter"};
  if (known.mass && !(*known.mass > LinearDensity{})) return Absent{"the line's weight per length is not above 0"};
  if (known.mass && known.diameter) return measured_section(known, water);
  if (known.nominal_rate) return nominal_section(known, water);
  return Absent{"give the sink rate, or the weight per length and the diameter"};
}

}  // namespace floatwright
