#pragma once
// Reads a number of judgement by method, bed or water. A bed nobody described counts as cobble.
#include "engine/choice/judgement.hpp"
#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"

namespace floatwright {

[[nodiscard]] constexpr double by_method(const MethodNumbers& numbers, Method method) {
  switch (method) {
    case Method::Swing:
      return numbers.swing;
    case Method::Strip:
      return numbers.strip;
    case Method::Indicator:
      return numbers.indicator;
    case Method::TightLine:
      return numbers.tight_line;
    case Method::Dry:
      return numbers.dry;
  }
  return numbers.swing;
}

[[nodiscard]] constexpr double by_bed(const BedNumbers& numbers, Bed bed) {
  switch (bed) {
    case Bed::Sand:
      return numbers.sand;
    case Bed::Gravel:
      return numbers.gravel;
    case Bed::Boulder:
      return numbers.boulder;
    case Bed::Wood:
      return numbers.wood;
    case Bed::Cobble:
    case Bed::Unknown:
      return numbers.cobble;
  }
  return numbers.cobble;
}

// For any set of numbers with a member per water: a method's row of the suits table, the cold water shares.
template <class Numbers>
[[nodiscard]] constexpr double by_water(const Numbers& numbers, WaterType water) {
  switch (water) {
    case WaterType::Riffle:
      return numbers.riffle;
    case WaterType::Run:
      return numbers.run;
    case WaterType::Pool:
      return numbers.pool;
    case WaterType::Tailout:
      return numbers.tailout;
    case WaterType::Bank:
      return numbers.bank;
    case WaterType::Eddy:
      return numbers.eddy;
    case WaterType::Pocket:
      return numbers.pocket;
  }
  return numbers.run;
}

}  // namespace floatwright
