#include "engine/readings/usable.hpp"

#include <array>
#include <cmath>
#include <utility>

namespace floatwright {
namespace {

// River water outside these is a sensor in air or a broken one; readings of -0.2 C are met and real.
constexpr double kColdestWater = -1.0;  // C
constexpr double kWarmestWater = 45.0;  // C

const std::array<std::pair<Mark, const char*>, 5> kUnusable{{{Mark::Ice, "marked ice"},
                                                             {Mark::Equipment, "marked equipment"},
                                                             {Mark::Backwater, "marked backwater"},
                                                             {Mark::Discontinued, "marked discontinued"},
                                                             {Mark::Unavailable, "marked unavailable"}}};

std::optional<std::string> why_impossible(double si, Variable variable) {
  if (!std::isfinite(si)) return "with a value that is no number";
  if (variable == Variable::Flow && si < 0.0) return "of negative flow";
  if (variable == Variable::Clarity && si < 0.0) return "of negative turbidity";
  if (variable == Variable::WaterTemperature && (si < kColdestWater || si > kWarmestWater))
    return "of a temperature that river water does not have";
  return std::nullopt;
}

}  // namespace

std::optional<std::string> why_not_usable(const Reading& row, Variable variable, Instant now) {
  if (row.time > now) return "later than now";
  for (const auto& [mark, words] : kUnusable)
    if (row.marks.contains(mark)) return words;
  if (!row.si) return "without a value";
  return why_impossible(*row.si, variable);
}

std::string name_of(Variable variable) {
  switch (variable) {
    case Variable::Flow:
      return "flow";
    case Variable::GaugeHeight:
      return "stage";
    case Variable::WaterTemperature:
      return "water temperature";
    case Variable::Clarity:
      return "turbidity";
    case Variable::AirTemperature:
      return "air temperature";
    case Variable::Rain:
      return "rain";
    case Variable::Wind:
      return "wind";
  }
  return "reading";
}

}  // namespace floatwright
