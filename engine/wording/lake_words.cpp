#include "engine/wording/lake_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/clock.hpp"
#include "engine/wording/typed.hpp"
#include "engine/wording/units.hpp"

namespace floatwright {
namespace {

constexpr Temperature kCold = celsius(10.0);     // as on rivers
constexpr Temperature kFreezing = celsius(2.0);  // a calm night away from ice; judgement
constexpr Temperature kDensest = celsius(4.0);   // fresh water is heaviest at 3.98 C: colder water lies over it

std::string name_of(const Lake& lake) { return typed(lake.name.empty() ? lake.id : lake.name); }

std::string at_depth(const ProfilePoint& point, UnitSystem units) {
  const std::string where = point.depth > Length{} ? "at " + say_length(point.depth, units) : std::string("at the top");
  return say_temperature(point.temperature, units) + " " + where;
}

// What a profile without a layer shows: where the water is nearest to what trout like.
std::string nearest_to_it(const std::vector<ProfilePoint>& profile, UnitSystem units) {
  const auto [coolest, warmest] = std::ranges::minmax_element(profile, {}, &ProfilePoint::temperature);
  if (coolest->temperature > kLayersWarmest)
    return fmt::format("the coolest is {}. Fish are near it, or where cold water comes in", at_depth(*coolest, units));
  if (warmest->temperature >= kLayersCoolest) return "";
  const bool winter = profile.front().temperature < profile.back().temperature && profile.front().temperature < kDensest;
  return fmt::format("the warmest is {}{}. Fish are slow: count long, retrieve slowly", at_depth(*warmest, units),
                     winter ? ", under colder water, as in winter" : "");
}

}  // namespace

std::string lake_words(const LakeAsked& asked, UnitSystem units) {
  const Lake& lake = asked.lake;
  const std::string wanted =
      fmt::format("{} to {}", temperature_figure(kLayersCoolest, units), say_temperature(kLayersWarmest, units));
  const std::string dated = lake.profile_on ? "profile of " + short_day(*lake.profile_on) : "profile without a date";
  if (asked.layer)
    return fmt::format("{}: fish {}-{} down, in the water of {}, not under the steepest drop nor in the weed; {}.",
                       name_of(lake), length_figure(asked.layer->from, units), say_length(asked.layer->to, units), wanted,
                       dated);
  if (lake.profile.size() < 2)
    return fmt::format("{}: {}. Find the fish by counting.", name_of(lake), asked.layer.why_absent());
  const std::string nearest = nearest_to_it(lake.profile, units);
  if (nearest.empty())
    return fmt::format("{}: {}; {}. Find the fish by counting.", name_of(lake), asked.layer.why_absent(), dated);
  return fmt::format("{}: no water of {}; {}. Find the fish by counting; {}.", name_of(lake), wanted, nearest, dated);
}

std::vector<std::string> lake_cautions(const LakeAsked& asked, UnitSystem units) {
  if (asked.lake.profile.empty())
    return {fmt::format("Water temperature is not known: measure before you launch. Under {} life jackets ON, everyone, all "
                        "day; from {} leave trout alone.",
                        say_temperature(kCold, units), say_temperature(asked.heat.stop, units))};
  const Temperature top = asked.lake.profile.front().temperature;
  const std::string water = "Water at the top " + say_temperature(top, units);
  std::vector<std::string> cautions;
  if (top >= asked.heat.stop)
    cautions.push_back(fmt::format("TOO WARM TO FISH FOR TROUT. {} (limit {}): a fish drawn up through it may die, however cool "
                                   "the water it came from. Leave them alone until it cools.",
                                   water, say_temperature(asked.heat.stop, units)));
  else if (top >= asked.heat.caution)
    cautions.push_back(fmt::format("{} (limit {}): land fish quickly, keep them in the water, and measure: it warms by day.",
                                   water, say_temperature(asked.heat.caution, units)));
  if (top < kCold) cautions.push_back(water + ": life jackets ON, everyone, all day. A swim is an emergency.");
  if (top < kFreezing) cautions.emplace_back("Ice may stand or form on it. Nothing here says that ice bears.");
  return cautions;
}

}  // namespace floatwright
