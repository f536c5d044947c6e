#pragma once
// How well a method suits a water, whatever the rig: the product of the suits table by water, temperature, clarity and
// low light, of cold water, of a listed hatch and of wind. Temperature unknown: the 10 C column and no cold. Clarity unknown:
// clear. No sun's elevation: the light is not counted.
#include <optional>

#include "engine/choice/judgement.hpp"
#include "engine/river/river.hpp"
#include "engine/tackle/tackle.hpp"
#include "engine/units/measured.hpp"

namespace floatwright {

struct Conditions {
  WaterType type = WaterType::Run;
  Measured<Temperature> temperature;
  Measured<Turbidity> clarity;
  std::optional<Angle> sun_elevation;
  bool hatch = false;
  std::optional<Speed> wind = std::nullopt;  // forecast; none: not counted
};

[[nodiscard]] double suits(Method method, const Conditions& conditions, const SuitsJudgement& judgement);

// W = preference x suits x min(1, E/0.5), at most 1.
[[nodiscard]] double worth(double preference, double suits, double efficiency, const ChoiceJudgement& judgement);

}  // namespace floatwright
