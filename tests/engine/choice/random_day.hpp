#pragma once
// Racks and days by chance, and what a choice of rods is worth there, reckoned without the program.
#include <algorithm>
#include <random>
#include <string>

#include "tests/engine/choice/hand_made.hpp"

namespace floatwright {

inline Tackle rack(std::size_t rods, std::size_t lines_on_each, std::size_t flies) {
  Tackle tackle;
  for (std::size_t r = 0; r < rods; ++r) {
    const std::string id = "rod" + std::to_string(r);
    tackle.rods.push_back({id, "square", 6, feet(9)});
    for (std::size_t l = 0; l < lines_on_each; ++l) {
      tackle.lines.push_back(line_on((id + "_" + std::to_string(l)).c_str(), id.c_str(), LineKind::Floating));
    }
  }
  for (std::size_t f = 0; f < flies; ++f) tackle.flies.push_back(fly_class("fly", {Method::Swing}, 0.2, 0.1));
  return tackle;
}

inline std::vector<WaterMinutes> random_day(const Tackle& tackle, std::size_t waters, std::mt19937& random) {
  std::uniform_real_distribution<double> worth(0.0, 1.0), time(5.0, 60.0), seconds_a_minute(15.0, 45.0);
  std::vector<WaterMinutes> day(waters);
  for (WaterMinutes& water : day) {
    water.time = minutes(time(random));
    for (std::size_t line = 0; line < tackle.lines.size(); ++line) {
      for (std::size_t fly = 0; fly < tackle.flies.size(); ++fly) {
        if (worth(random) < 0.3) continue;  // does not fish there
        const Method method = worth(random) < 0.5 ? Method::Swing : Method::Indicator;
        water.scored.push_back(scored(line, fly, method, seconds_a_minute(random), worth(random)));
      }
    }
  }
  return day;
}

// W, less in proportion where a rig has under nine tenths of the most seconds by its method in its water.
inline double value(const ScoredRig& rig, const WaterMinutes& water) {
  double most = 0;
  for (const ScoredRig& other : water.scored) {
    if (other.technique.method == rig.technique.method) most = std::max(most, other.seconds);
  }
  return rig.worth * std::min(1.0, rig.seconds / (0.9 * most));
}

inline double worth_of(const RodPlan& plan, const std::vector<WaterMinutes>& day) {
  double total = -in_minutes(plan.lost);
  for (std::size_t w = 0; w < day.size(); ++w) {
    if (plan.use[w]) total += in_minutes(day[w].time) * value(day[w].scored[*plan.use[w]], day[w]);
  }
  return total;
}

}  // namespace floatwright
