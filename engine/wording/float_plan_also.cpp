#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/say_water.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostAsGood = 3;

struct Other {
  const PlannedReach* reach;
  const PlannedWater* water;
  const ScoredRig* rig;
};

std::string where(const Other& other) { return typed(other.reach->name) + " (" + say(other.water->type) + ")"; }

template <class F>
void each_fished_water(const PlannedStretch& stretch, F&& f) {
  for (const PlannedReach& reach : stretch.reaches)
    for (const PlannedWater& water : reach.waters)
      if (reach.closed_why.empty() && water.choice.best) f(reach, water);
}

// Rigs that do as well as an advised one, each said once.
std::vector<Other> as_good(const PlannedStretch& stretch) {
  std::vector<Other> all;
  each_fished_water(stretch, [&](const PlannedReach& reach, const PlannedWater& water) {
    for (const ScoredRig& rig : water.choice.as_good) {
      const bool known = std::any_of(all.begin(), all.end(), [&](const Other& o) { return o.rig->rig == rig.rig; });
      if (!known && all.size() < kMostAsGood) all.push_back({&reach, &water, &rig});
    }
  });
  return all;
}

// For one who would rather: the best rig of each method in the water where that method, not being the one advised,
// fishes longest.
std::vector<Other> other_methods(const PlannedStretch& stretch) {
  std::vector<Other> all;
  each_fished_water(stretch, [&](const PlannedReach& reach, const PlannedWater& water) {
    for (const ScoredRig& rig : water.choice.by_method) {
      const Method method = rig.technique.method;
      if (method == water.choice.best->technique.method) continue;
      const auto known =
          std::find_if(all.begin(), all.end(), [&](const Other& o) { return o.rig->technique.method == method; });
      if (known == all.end()) {
        all.push_back({&reach, &water, &rig});
      } else if (rig.seconds > known->rig->seconds) {
        *known = {&reach, &water, &rig};
      }
    }
  });
  return all;
}

}  // namespace

void add_also(Page& page, const Told& told) {
  std::vector<std::string> lines;
  for (const Other& other : as_good(*told.floated))
    lines.push_back(fmt::format("As good at {}: {}, {}.", where(other), say(told.in.tackle, *other.rig, told.units),
                                say(other.rig->technique)));
  for (const Other& other : other_methods(*told.floated))
    lines.push_back(fmt::format(
        "Rather {}? Best at {}: {}, {}, {:.0f} seconds of each minute.", say(other.rig->technique.method), where(other),
        say(told.in.tackle, *other.rig, told.units), say(other.rig->technique), other.rig->seconds));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, "ALSO"});
}

}  // namespace floatwright
