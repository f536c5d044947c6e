#include "engine/wording/say_briefly.hpp"

#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

std::string water(const Caution& c, const char* way, UnitSystem units) {
  return c.temperature ? std::string("water ") + way + " " + say_temperature(*c.temperature, units) : "water";
}

// On foot a caution is given within the limits too.
std::string say_wading(const Caution& c) {
  if (!beyond_wading(c)) return "less than the limit may be too much for you, test each step";
  return std::string("too deep or too fast to wade") + (c.on_foot ? ", stay out of it" : "");
}

}  // namespace

std::string say_what_briefly(const Caution& c, const CautionWords& words) {
  if (!c.text.empty()) return without_stop(say_what(c, words));
  switch (c.kind) {
    case CautionKind::ColdWater:
      return water(c, "down to", words.units) + ": life jackets ON";
    case CautionKind::HeatCaution:
      return water(c, "up to", words.units) + ": land fish quickly";
    case CautionKind::HeatStop:
      return "TOO WARM TO FISH FOR TROUT, " + say_stop_by(c, words.clock);
    case CautionKind::HeatUnknown:
      return "water temperature is not known: measure it, life jackets ON until then";
    case CautionKind::Wading:
      return say_wading(c);
    case CautionKind::DamRise:
      return std::string("dam rise, no wading") + (c.on_foot ? ", be on the bank" : " or anchoring");
    case CautionKind::DamDrop:
      return std::string("the dam holds water back, ") +
             (c.on_foot ? "do not follow the edge out" : "do not leave the boat aground");
    case CautionKind::FastRise:
      if (!c.about.empty()) return "rising fast and may rise on, look at it before you go";
      return std::string("river rising fast, leave the bars, ") + (c.on_foot ? "get out of the water" : "do not anchor");
    default:
      return without_stop(say_what(c, words));
  }
}

}  // namespace floatwright
