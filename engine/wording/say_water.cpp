#include "engine/wording/say_water.hpp"

namespace floatwright {

std::string say(WaterType type) {
  switch (type) {
    case WaterType::Riffle:
      return "riffle";
    case WaterType::Run:
      return "run";
    case WaterType::Pool:
      return "pool";
    case WaterType::Tailout:
      return "tailout";
    case WaterType::Bank:
      return "bank";
    case WaterType::Eddy:
      return "eddy";
    case WaterType::Pocket:
      return "pocket";
  }
  return "water";
}

std::string say(DepthSource source) {
  switch (source) {
    case DepthSource::Noted:
      return "noted";
    case DepthSource::Surveyed:
      return "surveyed";
    case DepthSource::Guessed:
      return "guessed";
  }
  return "unknown";
}

}  // namespace floatwright
