#include <fmt/format.h>

#include <algorithm>

#include "engine/wording/float_plan_parts.hpp"
#include "engine/wording/say_rig.hpp"
#include "engine/wording/say_technique.hpp"
#include "engine/wording/typed.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kMostLines = 3;
constexpr std::size_t kMostRather = 2;  // where something else is as good as what is advised

struct Other {
  const PlannedReach* reach;
  const PlannedWater* water;
  const ScoredRig* rig;
};

template <class F>
void each_fished_water(const PlannedStretch& stretch, F&& f) {
  for (const PlannedReach& reach : stretch.reaches)
    for (const PlannedWater& water : reach.waters)
      if (reach.closed_why.empty() && water.choice.best) f(reach, water);
}

// Rigs that do as well as an advised one: a line once, a reach once.
std::vector<Other> as_good(const PlannedStretch& stretch) {
  std::vector<Other> all;
  each_fished_water(stretch, [&](const PlannedReach& reach, const PlannedWater& water) {
    for (const ScoredRig& rig : water.choice.as_good) {
      const bool told = std::any_of(all.begin(), all.end(), [&](const Other& o) {
        return o.reach == &reach || (o.rig->rig.line == rig.rig.line && o.rig->rig.tip == rig.rig.tip);
      });
      if (!told) all.push_back({&reach, &water, &rig});
    }
  });
  return all;
}

bool is_advised(const PlannedStretch& stretch, Method method) {
  bool advised = false;
  each_fished_water(stretch, [&](const PlannedReach&, const PlannedWater& water) {
    advised = advised || water.choice.best->technique.method == method;
  });
  return advised;
}

// For one who would rather: the best rig of each method in the water where that method, not being the one advised,
// fishes longest. Methods that the plan uses nowhere come first.
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
  std::stable_partition(all.begin(), all.end(),
                        [&](const Other& o) { return !is_advised(stretch, o.rig->technique.method); });
  return all;
}

// "floating nymph taper on B, leader 9 ft, weighted streamer"
std::string rig_words(const Told& told, const ScoredRig& rig) {
  const Tackle& tackle = told.in.tackle;
  const auto rod = in_boat(told.rods, tackle, rig.rig);
  return fmt::format("{}{}, {}, {}", say_line(tackle, rig.rig, told.units),
                     rod ? " on " + told.rods.rods[*rod].letter : not_at_hand(told),
                     say_leader(tackle, rig, told.units), say_fly(tackle, rig.rig));
}

// The indicator is named with its leader.
std::string how_words(const Told& told, const Technique& technique) {
  const std::string how = technique.method == Method::Indicator ? say(technique.platform) : say_how(told, technique);
  return how.empty() ? "" : ", " + how;
}

std::string rather_words(const Told& told, const Other& other) {
  return fmt::format("Rather {}? Best {}: {}{}, {:.0f} seconds of each minute.", say(other.rig->technique.method),
                     at_water(*other.reach, *other.water), rig_words(told, *other.rig), how_words(told, other.rig->technique),
                     other.rig->seconds);
}

std::string as_good_words(const Told& told, const Other& other) {
  return fmt::format("As good {}: {}{}.", at_water(*other.reach, *other.water), rig_words(told, *other.rig),
                     how_words(told, other.rig->technique));
}

}  // namespace

void add_also(Page& page, const Told& told) {
  const std::vector<Other> good = as_good(*told.floated), rather = other_methods(*told.floated);
  const std::size_t most_rather = good.empty() ? kMostLines : kMostRather;
  std::vector<std::string> lines;
  for (const Other& other : rather)
    if (lines.size() < most_rather) lines.push_back(rather_words(told, other));
  for (const Other& other : good)
    if (lines.size() < kMostLines) lines.push_back(as_good_words(told, other));
  if (!lines.empty()) page.blocks.push_back(Lines{lines, "ALSO"});
}

}  // namespace floatwright
