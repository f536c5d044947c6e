#include "engine/sinking/cylinder_drag.hpp"

#include <algorithm>
#include <cmath>

namespace floatwright {

const DragTable& drag_table() {
  static const DragTable table;
  return table;
}

double cylinder_drag_coefficient(double reynolds) {
  const double re = std::min(reynolds, DragTable::kMost);
  return 11.0 * std::pow(re, -0.75) + 0.9 * (1.0 - std::exp(-1000.0 / re)) +
         1.2 * (1.0 - std::exp(-std::pow(re / 4500.0, 0.7)));
}

DragTable::DragTable() {
  constexpr int kNodesPerOctave = 1 << kNodeBits;
  for (std::size_t i = 0; i < cd_.size(); ++i) {
    const int octave = kFirstOctave + static_cast<int>(i) / kNodesPerOctave;
    const double mantissa = 1.0 + static_cast<double>(i % kNodesPerOctave) / kNodesPerOctave;
    cd_[i] = cylinder_drag_coefficient(std::ldexp(mantissa, octave));
    single_[i] = static_cast<float>(cd_[i]);
  }
}

NormalDrag::NormalDrag(Length diameter, const WaterProperties& water)
    : half_density_diameter_(0.5 * water.density.si() * diameter.si()),
      reynolds_per_speed_(diameter.si() / water.viscosity.si()),
      table_(&drag_table()) {}

DragPerSpeed NormalDrag::at_a_creep(Speed across) const {
  const double u = across.si();               // m/s
  const double re = u * reynolds_per_speed_;  // -
  if (!(re > 0.0)) return {};
  return DragPerSpeed::from_si(half_density_diameter_ * cylinder_drag_coefficient(re) * u);
}

}  // namespace floatwright
