#pragma once
// Drag of a long cylinder square to the stream: what holds a line up and what a line sinks against.
// Source: Cheng 2013 (J. Hydraul. Eng., doi 10.1061/(ASCE)HY.1943-7900.0000722), Reynolds numbers below 2e5; held
// beyond.
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

#include "engine/sinking/water_properties.hpp"

namespace floatwright {

using ForcePerLength = Quantity<0, 1, -2>;  // N/m
using DragPerSpeed = Quantity<-1, 1, -1>;   // kg/m/s: force per length over the speed that causes it

// Cd [-] at Re [-]. Grows without bound as Re goes to 0: use NormalDrag, whose force is finite there.
[[nodiscard]] double cylinder_drag_coefficient(double reynolds);

// Cd over the tabled Reynolds numbers. A double's exponent and first six bits of mantissa are the node, the rest of its
// mantissa the way to the next one: nodes even within an octave, without a logarithm. Within 0.01 % between nodes.
class DragTable {
 public:
  static constexpr double kLeast = 1.0 / 1024.0, kMost = 2e5;
  DragTable();
  // For kLeast <= Re <= kMost.
  [[nodiscard]] double at(double reynolds) const {
    const auto bits = std::bit_cast<std::uint64_t>(reynolds);
    const std::size_t i = (bits >> kRestBits) - kFirst;
    const double way = static_cast<double>(bits & (kRest - 1)) * (1.0 / static_cast<double>(kRest));
    return cd_[i] + way * (cd_[i + 1] - cd_[i]);
  }

  static constexpr int kNodeBits = 6, kFirstOctave = -10, kOctaves = 28;
  // The same in single precision, from the first node on.
  [[nodiscard]] const float* nodes() const { return single_.data(); }

 private:
  static constexpr int kRestBits = 52 - kNodeBits, kExponentBias = 1023;
  static constexpr std::uint64_t kRest = std::uint64_t{1} << kRestBits;
  static constexpr std::uint64_t kFirst = static_cast<std::uint64_t>(kExponentBias + kFirstOctave) << kNodeBits;
  std::array<double, (std::size_t{kOctaves} << kNodeBits) + 1> cd_{};
  std::array<float, (std::size_t{kOctaves} << kNodeBits) + 1> single_{};
};

// The one table, made when it is first asked for.
[[nodiscard]] const DragTable& drag_table();

// 1/2 rho Cd(Re) d u |u| for one diameter in one water, from the table: the solvers ask some hundred times a line.
class NormalDrag {
 public:
  NormalDrag(Length diameter, const WaterProperties& water);
  // For a speed square to the line, 0 or more.
  [[nodiscard]] ForcePerLength at(Speed across) const { return per_speed(across) * across; }
  [[nodiscard]] DragPerSpeed per_speed(Speed across) const {
    const double u = across.si();               // m/s
    const double re = u * reynolds_per_speed_;  // -
    if (!(re >= DragTable::kLeast)) return at_a_creep(across);
    const double cd = table_->at(re < DragTable::kMost ? re : DragTable::kMost);
    return DragPerSpeed::from_si(half_density_diameter_ * cd * u);
  }

 private:
  [[nodiscard]] DragPerSpeed at_a_creep(Speed across) const;
  double half_density_diameter_;  // kg/m2
  double reynolds_per_speed_;     // s/m
  const DragTable* table_;
};

}  // namespace floatwright
